package sagbook.estimate.resistance;

import java.util.Optional;
import sagbook.estimate.ResistanceChange;
import sagbook.model.Estimate;

/**
 * Resistance of one place in the string; where it changed within the log, at the log's end.
 *
 * @param milliohm at the pulse time, 25 °C and mid charge, mΩ
 * @param relative over the string's median
 * @param ohmicExcessMilliohm purely ohmic part above the string's median, mΩ
 * @param slowRelative slow part of the response over the string's median
 * @param change since when it is another one, if it changed within the log
 */
public record CellResistance(
    Estimate milliohm,
    Estimate relative,
    Estimate ohmicExcessMilliohm,
    Estimate slowRelative,
    Optional<ResistanceChange> change) {}
