package sagbook.logfile;

/**
 * A stretch of a file over which time does not run backwards.
 *
 * @param firstLine physical line of its first row
 * @param lastLine physical line of its last row
 * @param firstS time of its first row
 * @param lastS time of its last row
 * @param rows rows in it
 */
record Run(long firstLine, long lastLine, double firstS, double lastS, long rows) {}
