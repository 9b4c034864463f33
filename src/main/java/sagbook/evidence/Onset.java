package sagbook.evidence;

/**
 * How soon the cells' voltages follow steps of the current that stand alone: sums over the row
 * before a step, the row after it and the last level row, from which follows how long after the
 * current each cell is read. Every term is multiplied by its step.
 *
 * @param steps how many
 * @param squares of the steps, A²
 * @param earlyState what the regressors of the {@link ResponseBasis} are in the row before and in
 *     the row after a step, together, less twice what they are one row earlier, if cells are read
 *     with the current; A²
 * @param laterState what they are in the last level row, less the same; A²
 * @param early the voltages as {@code earlyState}, one a cell, A V
 * @param later the voltages as {@code laterState}, one a cell, A V
 */
public record Onset(
    int steps,
    double squares,
    double[] earlyState,
    double[] laterState,
    double[] early,
    double[] later) {}
