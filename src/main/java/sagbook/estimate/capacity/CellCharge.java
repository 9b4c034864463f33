package sagbook.estimate.capacity;

import sagbook.model.Estimate;

/**
 * Charge side of one place in the string.
 *
 * @param capacityAh between full and empty at rest, Ah
 * @param relative over the string's median
 * @param offsetPercent fuller (+) or emptier (-) than the string's median at the end of the log,
 *     per cent of nominal capacity
 * @param selfDischargeMilliamp steady drain above the string's median, mA
 * @param voltageOffsetMillivolt constant error of the reading against the string's median, mV
 */
public record CellCharge(
    Estimate capacityAh,
    Estimate relative,
    Estimate offsetPercent,
    Estimate selfDischargeMilliamp,
    Estimate voltageOffsetMillivolt) {}
