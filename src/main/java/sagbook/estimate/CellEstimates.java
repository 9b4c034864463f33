package sagbook.estimate;

import java.util.Optional;
import sagbook.model.Estimate;

/**
 * What the log tells about one cell.
 *
 * @param cell place in the string, 1 for the first
 * @param capacityAh charge between full and empty at low rate and 25 °C, Ah
 * @param capacityRelative capacity over that of the string's median cell
 * @param resistanceMilliohm what the sense wires see (cell and joint) at 25 °C and mid charge,
 *     after the pulse time of {@link BankEstimates#resistancePulseS()}, mΩ
 * @param resistanceRelative the same over that of the string's median cell
 * @param ohmicExcessMilliohm purely ohmic resistance above the string's median: immediate, without
 *     slow tail, indifferent to temperature; the mark of a joint, mΩ
 * @param slowResponseRelative slow part of the response over the string's median; a worn cell
 *     raises it, a joint does not
 * @param chargeOffsetPercent how much fuller (+) or emptier (-) than the string's median the cell
 *     is at the latest end of charge, per cent of nominal capacity
 * @param selfDischargeMilliamp steady drain above the string's median, mA
 * @param voltageOffsetMillivolt constant error of the board's voltage against the string, mV
 * @param temperatureFault what is wrong with the temperature reading
 * @param resistanceChange since when the resistance is another one, if it changed within the log;
 *     the resistances above are then those at the log's end
 */
public record CellEstimates(
    int cell,
    Estimate capacityAh,
    Estimate capacityRelative,
    Estimate resistanceMilliohm,
    Estimate resistanceRelative,
    Estimate ohmicExcessMilliohm,
    Estimate slowResponseRelative,
    Estimate chargeOffsetPercent,
    Estimate selfDischargeMilliamp,
    Estimate voltageOffsetMillivolt,
    TemperatureFault temperatureFault,
    Optional<ResistanceChange> resistanceChange) {

  /** The same with a drain that may be larger by any amount. */
  public CellEstimates drainingAtLeast() {
    return new CellEstimates(
        cell,
        capacityAh,
        capacityRelative,
        resistanceMilliohm,
        resistanceRelative,
        ohmicExcessMilliohm,
        slowResponseRelative,
        chargeOffsetPercent,
        selfDischargeMilliamp instanceof Estimate.Known drain
            ? drain.open()
            : selfDischargeMilliamp,
        voltageOffsetMillivolt,
        temperatureFault,
        resistanceChange);
  }
}
