package sagbook.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.Stress;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.whatif.Prospect;
import sagbook.whatif.Spare;
import sagbook.whatif.Use;
import sagbook.whatif.WhatIf;

/** Estimates and stress of six cells, told by what differs from sound ones. */
final class Situation {
  static final int CELLS = 6;
  static final double NOMINAL_AH = 280;
  private static final Estimate UNKNOWN = Estimate.unknown("not seen");
  private static final Map<String, Estimate> SOUND =
      Map.of(
          "capacity", Estimate.of(1, 0.003),
          "resistance", Estimate.of(1, 0.01),
          "slow", Estimate.of(1, 0.03),
          "offset", Estimate.of(0, 0.1),
          "drain", Estimate.of(0, 1),
          "volt", Estimate.of(0, 1),
          "median", Estimate.of(NOMINAL_AH, 2),
          "energy", Estimate.of(17, 1));

  private final Map<String, Estimate> changed = new HashMap<>();
  private final Map<String, Double> seen = new HashMap<>();

  /**
   * A situation.
   *
   * @param differences such as {@code 2: capacity 0.92 0.01; 3: frozen; all: cold 2}
   */
  Situation(String differences) {
    for (String difference : differences.split(";", -1)) {
      if (!difference.isBlank()) {
        String[] parts = difference.trim().split(":? +", -1);
        for (String place : places(parts[0])) {
          set(place + " " + parts[1], Arrays.copyOfRange(parts, 2, parts.length));
        }
      }
    }
  }

  private static List<String> places(String place) {
    return place.equals("all") ? List.of("1", "2", "3", "4", "5", "6") : List.of(place);
  }

  private void set(String key, String[] values) {
    if (values.length == 2) {
      changed.put(key, Estimate.of(Double.parseDouble(values[0]), Double.parseDouble(values[1])));
    } else if (values.length == 1 && values[0].equals("?")) {
      changed.put(key, UNKNOWN);
    } else {
      seen.put(key, values.length == 0 ? 1 : Double.parseDouble(values[0]));
    }
  }

  private Estimate of(String place, String quantity) {
    Estimate sound = SOUND.get(quantity);
    if (sound == null) {
      throw new IllegalArgumentException(quantity);
    }
    return changed.getOrDefault(place + " " + quantity, sound);
  }

  private double[] read(String what, double base, double otherwise) {
    double[] all = new double[CELLS];
    for (int c = 0; c < CELLS; c++) {
      all[c] = base + seen.getOrDefault((c + 1) + " " + what, otherwise);
    }
    return all;
  }

  private double[] bled() {
    double[] all = new double[CELLS];
    for (int c = 0; c < CELLS; c++) {
      all[c] = seen.containsKey((c + 1) + " unbled") ? Double.NaN : 0;
    }
    return all;
  }

  BankEstimates estimates() {
    List<CellEstimates> cells = new ArrayList<>();
    for (int place = 1; place <= CELLS; place++) {
      String at = Integer.toString(place);
      cells.add(
          new CellEstimates(
              place,
              UNKNOWN,
              of(at, "capacity"),
              UNKNOWN,
              of(at, "resistance"),
              UNKNOWN,
              of(at, "slow"),
              of(at, "offset"),
              of(at, "drain"),
              of(at, "volt"),
              seen.containsKey(at + " frozen")
                  ? new TemperatureFault.Seen("has not moved for 12 days")
                  : new TemperatureFault.None(),
              Optional.empty()));
    }
    return new BankEstimates(
        10,
        of("pack", "energy"),
        of("pack", "median"),
        UNKNOWN,
        UNKNOWN,
        Collections.nCopies(CELLS, UNKNOWN),
        cells,
        List.of());
  }

  Prospect prospect() {
    Use use = new Use(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    Spare spare = new Spare(NOMINAL_AH, OptionalDouble.empty(), false);
    BankEstimates estimates = estimates();
    return new WhatIf(
            estimates.cells(),
            estimates.medianCapacityAh(),
            NOMINAL_AH,
            Chemistry.LFP,
            2.5,
            use,
            spare)
        .prospect();
  }

  Stress stress() {
    double[] over = read("over", 0, 0);
    double[] under = read("under", 0, 0);
    double[] high = new double[CELLS];
    double[] low = new double[CELLS];
    for (int c = 0; c < CELLS; c++) {
      high[c] = over[c] > 0 ? 3.72 : 3.5;
      low[c] = seen.getOrDefault((c + 1) + " drained", under[c] > 0 ? 2.4 : 3.0);
    }
    double[] warmth = read("warmth", 20, 0);
    return new Stress(
        700,
        seen.containsKey("1 uncounted") ? Double.NaN : 1000,
        990,
        53,
        50,
        over,
        under,
        high,
        low,
        read("cold", 0, 0),
        new double[CELLS],
        read("hot", 0, 0),
        warmth,
        warmth,
        warmth,
        bled(),
        80);
  }
}
