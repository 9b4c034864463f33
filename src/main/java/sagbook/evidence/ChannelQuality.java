package sagbook.evidence;

/**
 * How good one channel of the log is.
 *
 * @param name in the keeper's words, such as "cell 3 voltage"
 * @param validShare share of rows with a value, 0 to 1
 * @param resolution smallest step seen, in the channel's unit; NaN when unknown
 * @param noise standard deviation of a reading in quiet times, in the channel's unit; NaN when
 *     unknown
 * @param stuckHours longest time without any change while the others moved, h
 */
public record ChannelQuality(
    String name, double validShare, double resolution, double noise, double stuckHours) {}
