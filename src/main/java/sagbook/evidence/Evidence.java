package sagbook.evidence;

import java.util.List;
import sagbook.model.Channels;

/**
 * All that the estimators see of a bank's log.
 *
 * @param channels what was logged
 * @param firstS first row, s since 1970
 * @param lastS last row, s since 1970
 * @param rows rows read
 * @param cadenceS usual time between rows (median), s
 * @param wanderAhInADay what the charge counter wanders in a day because the moments of steps
 *     between rows aren't known, one standard deviation, Ah
 * @param thinned about one row a minute
 * @param basis the functions of time that the step response is built of
 * @param steps sums for the step response, window by window
 * @param onsets how soon the cells follow steps, some days in each; empty without a current
 * @param toldLagS how long after the current each cell is read, s, where the log itself has a time
 *     for each value; else empty
 * @param edges a few of the cleanest current steps, to be shown
 * @param turns ends of charge and of discharge, in time order
 * @param stress what the cells went through
 * @param temperatureStuckHours longest time for which a cell's temperature stood still while the
 *     others moved, one a cell, h; empty without temperatures
 */
public record Evidence(
    Channels channels,
    double firstS,
    double lastS,
    long rows,
    double cadenceS,
    double wanderAhInADay,
    ThinnedRecord thinned,
    ResponseBasis basis,
    List<StepWindow> steps,
    List<Onset> onsets,
    double[] toldLagS,
    List<Edge> edges,
    List<Turn> turns,
    Stress stress,
    double[] temperatureStuckHours) {

  public Evidence {
    steps = List.copyOf(steps);
    onsets = List.copyOf(onsets);
    edges = List.copyOf(edges);
    turns = List.copyOf(turns);
  }
}
