package sagbook.estimate.resistance;

import sagbook.model.Estimate;

/**
 * Resistance of one place in the string.
 *
 * @param milliohm at the pulse time, 25 °C and mid charge, mΩ
 * @param relative over the string's median
 * @param ohmicExcessMilliohm purely ohmic part above the string's median, mΩ
 * @param slowRelative slow part of the response over the string's median
 */
public record CellResistance(
    Estimate milliohm, Estimate relative, Estimate ohmicExcessMilliohm, Estimate slowRelative) {}
