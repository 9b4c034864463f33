package sagbook.estimate;

import java.util.List;
import sagbook.model.Estimate;

/**
 * What the log tells about one bank.
 *
 * @param resistancePulseS pulse time of the resistances, s
 * @param activationEnergyKilojoulePerMole temperature dependence of the string's resistance, fitted
 *     or the stated default
 * @param medianCapacityAh capacity of the string's median cell, Ah
 * @param stringUsableAh charge the string gives between its first full and its first empty cell, Ah
 * @param stringBalancedAh the same if all cells were brought to full together: the smallest
 *     capacity, Ah
 * @param replacementGainAh usable charge that replacing each cell by one like the string's median
 *     would add, one a cell, Ah
 * @param cells one a cell, cell 1 first
 * @param remarks plain sentences about the whole bank: assumptions made, corrections applied
 */
public record BankEstimates(
    double resistancePulseS,
    Estimate activationEnergyKilojoulePerMole,
    Estimate medianCapacityAh,
    Estimate stringUsableAh,
    Estimate stringBalancedAh,
    List<Estimate> replacementGainAh,
    List<CellEstimates> cells,
    List<String> remarks) {
  public BankEstimates {
    replacementGainAh = List.copyOf(replacementGainAh);
    cells = List.copyOf(cells);
    remarks = List.copyOf(remarks);
  }
}
