package sagbook.estimate.drain;

/**
 * How far a cell was behind the string's median cell at one end of charge or of discharge.
 *
 * @param day days since the start of the log
 * @param full whether the string was at its fullest, or else at its emptiest, of that day
 * @param low the least that it may have been behind, as a share of capacity; below 0 if ahead
 * @param high the most
 */
record Lag(double day, boolean full, double low, double high) {}
