package sagbook.whatif;

import sagbook.model.Estimate;

/**
 * What a change buys against leaving the string as it is.
 *
 * @param change what is done
 * @param gainAh more charge from the first full to the first empty cell, at low rate, Ah
 * @param gainEveningAh more charge at the household's typical evening load, which stops when the
 *     first cell's loaded voltage is down at its lower limit, Ah
 * @param gainKWh the same as energy, kWh
 * @param gainEveningMinutes the same as time at that load, min
 * @param sagV the whole string's voltage drop at the highest discharge current seen, after the
 *     change, V
 * @param lessSagV by how much less than now, V
 */
public record Outcome(
    Change change,
    Estimate gainAh,
    Estimate gainEveningAh,
    Estimate gainKWh,
    Estimate gainEveningMinutes,
    Estimate sagV,
    Estimate lessSagV) {}
