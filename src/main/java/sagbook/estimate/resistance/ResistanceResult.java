package sagbook.estimate.resistance;

import java.util.List;
import sagbook.model.Estimate;

/**
 * Resistances of a bank.
 *
 * @param pulseS time after the step, s
 * @param activationEnergyKilojoulePerMole of the string, fitted or the stated default
 * @param cells one a cell
 */
public record ResistanceResult(
    double pulseS, Estimate activationEnergyKilojoulePerMole, List<CellResistance> cells) {
  public ResistanceResult {
    cells = List.copyOf(cells);
  }
}
