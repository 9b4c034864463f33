package sagbook.estimate.curve;

import java.util.List;
import sagbook.model.Chemistry;
import sagbook.model.OpenCircuitTable;
import sagbook.numeric.MonotoneCurve;

/**
 * The keeper's own table, split in what belongs to either electrode, so that a cell that lost
 * cyclable lithium can have its full end moved against its empty end.
 *
 * <p>On a flat curve what rises beyond the flattest place shortly before full is the positive
 * electrode's. On a sloping one the published function of the positive electrode says which slope
 * is its own; the rest of the table is the graphite's.
 */
final class TablePair {
  /** Between these charges the flat part of an LFP curve meets the knee at the end of charge. */
  private static final double FIRST_SPLIT = 0.86;

  private static final double LAST_SPLIT = 0.97;

  /** Room below the table's first point, so that a root there can be found. */
  private static final double BELOW = 0.01;

  private TablePair() {}

  static ElectrodePair of(OpenCircuitTable table, Chemistry chemistry) {
    MonotoneCurve curve = new MonotoneCurve(array(table.chargeFraction()), array(table.volt()));
    return chemistry == Chemistry.LFP
        ? new Flat(curve, flattest(curve))
        : new Sloping(curve, HalfCells.of(chemistry).get(0));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double flattest(MonotoneCurve curve) {
    double best = FIRST_SPLIT;
    double least = Double.POSITIVE_INFINITY;
    for (double z = FIRST_SPLIT; z <= LAST_SPLIT; z += 0.002) {
      double rise = curve.at(z + 0.015) - curve.at(z - 0.015);
      if (rise < least) {
        least = rise;
        best = z;
      }
    }
    return best;
  }

  /** A flat curve: both shares are charges of the table, counted from full and from empty. */
  private record Flat(MonotoneCurve curve, double split) implements ElectrodePair {
    @Override
    public double positive(double y) {
      return curve.at(Math.max(split, 1 - y)) - curve.at(split);
    }

    @Override
    public double negative(double x) {
      return -curve.at(Math.min(split, x - BELOW));
    }

    @Override
    public double positiveSize() {
      return 1;
    }

    @Override
    public double negativeSize() {
      return 1;
    }

    @Override
    public double fullPositive() {
      return 0;
    }

    @Override
    public double emptyNegative() {
      return BELOW;
    }

    @Override
    public Chemistry chemistry() {
      return Chemistry.LFP;
    }
  }

  /** A sloping curve: the electrodes are as large as the published ones. */
  private record Sloping(MonotoneCurve curve, ElectrodePair published) implements ElectrodePair {
    @Override
    public double positive(double y) {
      return published.positive(y);
    }

    @Override
    public double negative(double x) {
      double charge = (x - emptyNegative()) * negativeSize();
      double y = fullPositive() + (1 - charge) / positiveSize();
      return published.positive(y) - curve.at(charge);
    }

    @Override
    public double positiveSize() {
      return published.positiveSize();
    }

    @Override
    public double negativeSize() {
      return published.negativeSize();
    }

    @Override
    public double fullPositive() {
      return published.fullPositive();
    }

    @Override
    public double emptyNegative() {
      return published.emptyNegative();
    }

    @Override
    public Chemistry chemistry() {
      return published.chemistry();
    }
  }
}
