package sagbook.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;

/** Strings of LFP cells of 100 Ah nominal with known capacities, rooms to full and resistances. */
final class InventedString {
  static final double MEDIAN_AH = 100;
  private static final Estimate UNKNOWN = Estimate.unknown("not measured");

  private final List<CellEstimates> cells = new ArrayList<>();
  private Use use =
      new Use(OptionalDouble.of(330), OptionalDouble.of(3.3 * 16), OptionalDouble.of(50));
  private Spare spare = new Spare(100, OptionalDouble.empty(), true);

  /** Adds a cell with its room to full, all exact. */
  InventedString cell(double capacityAh, double roomAh) {
    return cell(exact(capacityAh / MEDIAN_AH), exact(-roomAh), exact(1), exact(0));
  }

  InventedString cell(
      Estimate relative, Estimate offsetPercent, Estimate milliohm, Estimate joint) {
    cells.add(
        new CellEstimates(
            cells.size() + 1,
            UNKNOWN,
            relative,
            milliohm,
            milliohm,
            joint,
            UNKNOWN,
            offsetPercent,
            UNKNOWN,
            UNKNOWN,
            new TemperatureFault.None(),
            Optional.empty()));
    return this;
  }

  InventedString use(Use other) {
    use = other;
    return this;
  }

  InventedString spare(double capacityAh, OptionalDouble milliohm) {
    spare = new Spare(capacityAh, milliohm, true);
    return this;
  }

  static Estimate exact(double value) {
    return Estimate.of(value, 0);
  }

  WhatIf asked() {
    return asked(exact(MEDIAN_AH));
  }

  WhatIf asked(Estimate medianAh) {
    return new WhatIf(cells, medianAh, 100, Chemistry.LFP, 2.5, use, spare);
  }
}
