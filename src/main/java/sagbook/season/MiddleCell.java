package sagbook.season;

import java.util.ArrayList;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/** The cell in the middle of the string, neither the best nor the worst. */
public final class MiddleCell {
  private MiddleCell() {}

  /** Median of the cells' resistances at 25 °C, with the median of their half-widths, mΩ. */
  public static Estimate resistance(KeptMonth month) {
    List<Estimate.Known> known = new ArrayList<>();
    for (KeptCheck.Cell cell : month.bank().cells()) {
      if (cell.estimate(Quantity.RESISTANCE_MOHM) instanceof Estimate.Known value) {
        known.add(value);
      }
    }
    if (known.isEmpty()) {
      return Estimate.unknown(SeasonWords.say("resistance.unknown"));
    }
    double middle = Robust.median(known.stream().mapToDouble(Estimate.Known::value).toArray());
    double half = Robust.median(known.stream().mapToDouble(Estimate.Known::halfWidth).toArray());
    return new Estimate.Known(middle, middle - half, middle + half);
  }
}
