package sagbook.estimate.axis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.numeric.Robust;

/**
 * Takes the current sensor's offset out of the charge counter. Every time the string is charged
 * past the same voltage (corrected for the drop over its resistance) it holds the same charge, so
 * the counter must read the same; what it reads otherwise is drift. The voltage is the one at which
 * the curve is steep and that most charges pass: the top knee where it is reached, else the step in
 * the middle of the curve.
 */
public final class AxisBuilder {
  /** Steps in which voltages are tried, V. */
  private static final double LEVEL_STEP = 0.005;

  private final ThinnedRecord record;
  private final List<Turn> turns;
  private final double nominalAh;
  private final double[] restingV;
  private final Counter counter;

  private AxisBuilder(ThinnedRecord record, List<Turn> turns, double nominalAh, double slowOhm) {
    this.record = record;
    this.turns = turns;
    this.nominalAh = nominalAh;
    this.restingV = restingVoltage(record, slowOhm);
    this.counter = Counter.of(record);
  }

  /**
   * Median cell voltage less the drop over the slow resistance, one a row, V; NaN where unknown.
   *
   * @param slowOhm response some minutes after a step, ohm; 0 without current
   */
  public static double[] restingVoltage(ThinnedRecord record, double slowOhm) {
    double[] resting = new double[record.rows()];
    double[] one = new double[record.cells()];
    for (int r = 0; r < resting.length; r++) {
      for (int c = 0; c < one.length; c++) {
        one[c] = record.voltageV()[c][r];
      }
      double drop = slowOhm == 0 ? 0 : slowOhm * record.currentA()[r];
      resting[r] = Robust.median(one) - drop;
    }
    return resting;
  }

  /**
   * Charge axis of a record with current.
   *
   * @param nominalAh nominal capacity, Ah
   * @param slowOhm response of the string's cells some minutes after a step, ohm
   */
  public static ChargeAxis build(
      ThinnedRecord record, List<Turn> turns, double nominalAh, double slowOhm) {
    return new AxisBuilder(record, turns, nominalAh, slowOhm).build();
  }

  private ChargeAxis build() {
    List<List<Crossing>> byLevel = new ArrayList<>();
    for (double level : levels()) {
      byLevel.add(crossings(level));
    }
    List<Crossing> best = List.of();
    for (List<Crossing> found : byLevel) {
      best = information(found) > information(best) ? found : best;
    }
    if (best.isEmpty()) {
      return new ChargeAxis(counter.ah(), false, 0, 0);
    }
    List<Crossing> anchors = withoutOutliers(best);
    ChargeAxis first = pinned(anchors);
    List<Crossing> all = new ArrayList<>(anchors);
    all.addAll(elsewhere(first, byLevel));
    all.sort(Comparator.comparingInt(Crossing::row));
    return all.size() == anchors.size() ? first : pinned(all);
  }

  private ChargeAxis pinned(List<Crossing> anchors) {
    int[] rows = anchors.stream().mapToInt(Crossing::row).toArray();
    double[] ah = anchors.stream().mapToDouble(Crossing::ah).toArray();
    return ChargeAxis.pinnedAt(counter, rows, ah);
  }

  private static double information(List<Crossing> crossings) {
    return crossings.stream().mapToDouble(c -> c.slope * c.slope).sum();
  }

  /**
   * Anchors for the sections that have none at the best voltage: crossings of the voltage that says
   * most there and whose place on the axis the other sections tell, less that place.
   */
  private List<Crossing> elsewhere(ChargeAxis axis, List<List<Crossing>> byLevel) {
    List<Crossing> best = List.of();
    for (List<Crossing> level : byLevel) {
      List<Crossing> placed = new ArrayList<>();
      List<Crossing> lost = new ArrayList<>();
      for (Crossing crossing : withoutOutliers(level)) {
        (Double.isNaN(axis.chargeAh()[crossing.row]) ? lost : placed).add(crossing);
      }
      if (!placed.isEmpty() && information(lost) > information(best)) {
        double place =
            Robust.median(
                placed.stream()
                    .mapToDouble(c -> c.ah - counter.ah()[c.row] + axis.chargeAh()[c.row])
                    .toArray());
        best = lost.stream().map(c -> new Crossing(c.row, c.ah - place, c.slope)).toList();
      }
    }
    return best;
  }

  private double[] levels() {
    double low = Robust.quantile(restingV, 0.3);
    double high = Robust.quantile(restingV, 0.9995);
    int n = (int) Math.max(0, Math.floor((high - low) / LEVEL_STEP));
    double[] levels = new double[n];
    for (int k = 0; k < n; k++) {
      levels[k] = low + (k + 0.5) * LEVEL_STEP;
    }
    return levels;
  }

  private record Crossing(int row, double ah, double slope) {}

  /** Where each charge passes a voltage: the mean of its first and its last upward crossing. */
  private List<Crossing> crossings(double level) {
    List<Crossing> found = new ArrayList<>();
    for (Turn turn : turns) {
      if (!turn.charge()) {
        continue;
      }
      int first = -1;
      int last = -1;
      for (int r = turn.fromRow() + 1; r <= turn.toRow(); r++) {
        if (restingV[r - 1] < level && restingV[r] >= level && record.currentA()[r] > 0) {
          first = first < 0 ? r : first;
          last = r;
        }
      }
      if (first > 0 && counter.together(first, last)) {
        double ah = (ahAt(first, level) + ahAt(last, level)) / 2;
        double spreadAh = Math.abs(ahAt(last, level) - ahAt(first, level)) / 2;
        double slope = slopeAround(turn, ah, level);
        double blurred = 1 / (1 / Math.max(1e-9, slope) + spreadAh / 0.004);
        found.add(new Crossing((first + last) / 2, ah, blurred));
      }
    }
    return found;
  }

  private double ahAt(int r, double level) {
    double share = (level - restingV[r - 1]) / Math.max(1e-9, restingV[r] - restingV[r - 1]);
    return counter.ah()[r - 1] + share * (counter.ah()[r] - counter.ah()[r - 1]);
  }

  /** Mean slope of the voltage over two per cent of charge below the crossing, V/Ah. */
  private double slopeAround(Turn turn, double ah, double level) {
    double reach = 0.02 * nominalAh;
    double sum = 0;
    int n = 0;
    for (int r = turn.fromRow(); r <= turn.toRow(); r++) {
      double below = ah - counter.ah()[r];
      if (below > 0.5 * reach && below < reach && !Double.isNaN(restingV[r])) {
        sum += (level - restingV[r]) / below;
        n++;
      }
    }
    return n == 0 ? 0 : Math.max(0, sum / n);
  }

  /** Leaves out crossings that would need an unlikely jump of the counter. */
  private List<Crossing> withoutOutliers(List<Crossing> all) {
    double[] slopes = all.stream().mapToDouble(Crossing::slope).toArray();
    double usual = Robust.median(slopes);
    List<Crossing> kept = new ArrayList<>();
    for (Crossing crossing : all) {
      if (crossing.slope > 0.3 * usual) {
        kept.add(crossing);
      }
    }
    return kept.isEmpty() ? all : kept;
  }
}
