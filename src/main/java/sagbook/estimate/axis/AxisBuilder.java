package sagbook.estimate.axis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
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

  /** A crossing less steep than this share of the usual one is left out. Common practice. */
  private static final double STEEP_ENOUGH = 0.3;

  /** How far from an anchor the counter is taken to hold, s. Common practice, no source. */
  private static final double FAR_S = 5 * 86_400;

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
    List<Crossing> more = others(anchors, byLevel);
    if (more.isEmpty()) {
      return pinned(anchors);
    }
    more.addAll(anchors);
    more.sort(Comparator.comparingInt(Crossing::row));
    return pinned(more);
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
   * Anchors for the charges that did not pass the best voltage and lie far beyond those that did:
   * where they pass another one, as steep as can be had, whose place on the axis the anchored
   * charges tell. Between anchors, and near one, the counter errs less than such a crossing.
   */
  private List<Crossing> others(List<Crossing> anchors, List<List<Crossing>> byLevel) {
    ChargeAxis axis = pinned(anchors);
    Set<Turn> anchored = anchors.stream().map(Crossing::turn).collect(Collectors.toSet());
    Map<Turn, Crossing> steepest = new LinkedHashMap<>();
    for (List<Crossing> level : byLevel) {
      double[] places =
          level.stream()
              .filter(c -> anchored.contains(c.turn))
              .mapToDouble(c -> c.ah - counter.ah()[c.row] + axis.chargeAh()[c.row])
              .toArray();
      if (places.length == 0) {
        continue;
      }
      double placeAh = Robust.median(places);
      for (Crossing c : level) {
        if (farBeyond(anchors, c)) {
          steepest.merge(c.turn, c.from(placeAh), (a, b) -> a.slope >= b.slope ? a : b);
        }
      }
    }
    double usual = Robust.median(anchors.stream().mapToDouble(Crossing::slope).toArray());
    Map<Integer, Double> steepestOfSection = new HashMap<>();
    for (Crossing c : steepest.values()) {
      steepestOfSection.merge(counter.section()[c.row], c.slope, Math::max);
    }
    List<Crossing> found = new ArrayList<>();
    for (Crossing c : steepest.values()) {
      boolean lost = Double.isNaN(axis.chargeAh()[c.row]);
      double measure =
          lost ? steepestOfSection.getOrDefault(counter.section()[c.row], usual) : usual;
      if (c.slope > STEEP_ENOUGH * measure) {
        found.add(c);
      }
    }
    return found;
  }

  /** Whether the anchors of its section all lie days before a crossing, or all days after it. */
  private boolean farBeyond(List<Crossing> anchors, Crossing crossing) {
    boolean before = true;
    boolean after = true;
    for (Crossing anchor : anchors) {
      if (counter.together(anchor.row, crossing.row)) {
        double sinceS = record.timeS()[crossing.row] - record.timeS()[anchor.row];
        before &= sinceS > FAR_S;
        after &= sinceS < -FAR_S;
      }
    }
    return before || after;
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

  /**
   * One charge's crossing of a voltage.
   *
   * @param ah what the counter reads beyond the place of that voltage on the axis, Ah
   * @param slope of the voltage there, blurred by how long it lingers, V/Ah
   */
  private record Crossing(Turn turn, int row, double ah, double slope) {
    /** The same for a voltage that lies elsewhere on the axis. */
    Crossing from(double placeAh) {
      return new Crossing(turn, row, ah - placeAh, slope);
    }
  }

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
        found.add(new Crossing(turn, (first + last) / 2, ah, blurred));
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
      if (crossing.slope > STEEP_ENOUGH * usual) {
        kept.add(crossing);
      }
    }
    return kept.isEmpty() ? all : kept;
  }
}
