package sagbook.evidence;

/**
 * One current step, kept to be shown.
 *
 * @param timeS when the first sample after the step was taken, s since 1970
 * @param offsetS time of each kept sample relative to that, s
 * @param currentA current at each kept sample, A; empty when not logged
 * @param voltageV voltage at each kept sample, [cell][sample], V
 * @param stepA change of current across the step, A; NaN when not logged
 * @param clean whether the current was quiet before and after
 */
public record Edge(
    double timeS,
    double[] offsetS,
    double[] currentA,
    double[][] voltageV,
    double stepA,
    boolean clean) {}
