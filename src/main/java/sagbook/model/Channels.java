package sagbook.model;

/**
 * Which quantities a bank's log holds, the same for every block of one reading.
 *
 * @param seriesCells cells in series
 * @param hasTemperature at least one cell temperature is logged
 * @param hasCurrent pack current (or power) is logged
 * @param hasBleed at least one board's bleed level is logged
 */
public record Channels(
    int seriesCells, boolean hasTemperature, boolean hasCurrent, boolean hasBleed) {}
