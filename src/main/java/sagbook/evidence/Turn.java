package sagbook.evidence;

/**
 * An end of charge or an end of discharge in the thinned record.
 *
 * @param charge true for an end of charge
 * @param fromRow first row of the stretch that leads to it
 * @param toRow row at which it ends
 * @param meanVoltageV mean cell voltage at the end, V
 * @param extremeVoltageV highest (charge) or lowest (discharge) cell voltage at the end, V
 * @param extremeCell the cell that shows it, 1 for the first
 */
public record Turn(
    boolean charge,
    int fromRow,
    int toRow,
    double meanVoltageV,
    double extremeVoltageV,
    int extremeCell) {}
