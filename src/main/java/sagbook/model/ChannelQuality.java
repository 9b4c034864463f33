package sagbook.model;

/**
 * How good one channel of the log is.
 *
 * @param name in the keeper's words, such as "cell 3 voltage"
 * @param unit of resolution and noise
 * @param validShare share of rows with a value, 0 to 1
 * @param resolution smallest step seen; NaN when it never changed
 * @param noise standard deviation of a reading about its like in quiet times; NaN when unknown
 * @param stuckHours longest time without any change while the others moved, h
 * @param delayS how long after the first cell it is read, s; NaN when that can't be told
 */
public record ChannelQuality(
    String name,
    String unit,
    double validShare,
    double resolution,
    double noise,
    double stuckHours,
    double delayS) {}
