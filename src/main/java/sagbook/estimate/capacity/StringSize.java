package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;

/**
 * The string's own size, roughly, where nobody told its capacity. Over the string's voltage along
 * the counted charge published curves are laid: on a sloping curve those of usual cells in all
 * sizes; on a flat one, whose step lies elsewhere in a cell that lost lithium, both electrodes
 * ({@link BothElectrodes}) in turns, each in shares of the size found before. Good enough for what
 * is reckoned in shares of capacity; the string's capacity itself is told with more care ({@link
 * MedianCapacity}).
 *
 * @param ah the size, Ah
 * @param lowAh smallest that may be, Ah
 * @param highAh largest that may be, Ah
 */
public record StringSize(double ah, double lowAh, double highAh) {
  /** Sizes that are tried, as multiples of the charge between the lowest and highest place. */
  private static final double SMALLEST = 0.9;

  private static final double LARGEST = 10;

  /** From one size that is tried to the next. */
  private static final double SIZE_STEP = 1.03;

  /** Steps in which the place of the full string is tried, share of the size. */
  private static final double PLACE_STEP = 0.01;

  /** Charges outside 0 to 1 by which a curve may be carried on. */
  private static final double BEYOND = 0.03;

  /** Places at which curves are compared. */
  private static final int POINTS = 60;

  /** Neighbouring points share their misfit: about one in five is independent. */
  private static final double INDEPENDENT = POINTS / 5.0;

  /**
   * What a curve of another maker may be off by, V, and along the charge, share of what was seen.
   */
  private static final double CURVE_V = 0.004;

  private static final double CURVE_PLACE = 0.012;

  /** Constant part of that, one standard deviation, V. */
  private static final double CONSTANT_V = 0.006;

  /** Twice the log of the likelihood ratio at a 95 % limit. */
  private static final double LIMIT = 3.84;

  /** A range wider than this, high over low, tells no size. Common practice, no source. */
  private static final double WIDEST = 1.3;

  /**
   * Sizes from which a flat curve is laid, as multiples of the charge seen: a string is seldom used
   * wholly, or by less than a half. Where both end up alike the log tells it.
   */
  private static final double[] STARTS = {1.15, 2.2};

  private static final int TURNS = 2;

  /** Bins of the first look at the curve to the charge seen. Common practice, no source. */
  private static final double BINS = 400;

  private static final Comparator<Sized> BEST = Comparator.comparingDouble(Sized::squares);

  /** Whether the log tells it well enough for shares of it to mean something. */
  public boolean isTold() {
    return highAh < WIDEST * lowAh;
  }

  /**
   * Lays the curves.
   *
   * @param record thinned record with the logged current
   * @param axis its charge axis
   * @param slowOhm response of the string's cells some minutes after a step, ohm
   */
  public static Optional<StringSize> of(
      ThinnedRecord record, ChargeAxis axis, double slowOhm, PackDescription pack) {
    double[] place = Arrays.stream(axis.chargeAh()).filter(Double::isFinite).sorted().toArray();
    if (place.length < POINTS) {
      return Optional.empty();
    }
    double spanAh = place[place.length - 1] - place[0];
    if (!(spanAh > 0)) {
      return Optional.empty();
    }
    double stepAh = spanAh / BINS;
    StringView view = StringView.of(record, axis.chargeAh(), spanAh, pack.bleedOhm());
    TimeGrid grid = TimeGrid.over(view.day());
    CommonPart common = new CommonPart(view.day(), view.rowsOf(), view.cells(), spanAh, 10);
    CurveLearner.Learned seen =
        new CurveLearner(view, grid, common, slowOhm, stepAh, 0, 0)
            .first(AxisBuilder.restingVoltage(record, slowOhm));
    return pack.chemistry() == Chemistry.LFP
        ? flat(seen, pack)
        : Optional.of(new Layer(seen, pack).lay());
  }

  /** A flat curve; nothing where it was not seen to full, which leaves its place open. */
  private static Optional<StringSize> flat(CurveLearner.Learned seen, PackDescription pack) {
    double spanAh = seen.toAh() - seen.fromAh();
    List<ElectrodePair> pairs = pairs(pack).toList();
    List<Sized> sized = new ArrayList<>();
    for (double start : STARTS) {
      double unitAh = start * spanAh;
      List<Sized> laid = List.of();
      for (int turn = 0; turn < TURNS; turn++) {
        laid = laid(pairs, seen, unitAh);
        unitAh = laid.isEmpty() ? unitAh : Collections.min(laid, BEST).ah();
      }
      sized.addAll(laid);
    }
    if (sized.isEmpty()) {
      return Optional.empty();
    }
    Sized best = Collections.min(sized, BEST);
    double scale = Math.max(1, best.squares() / BothElectrodes.FREE);
    return CurveSplit.of(seen, pack, best.ah()).curve().topVisited()
        ? Optional.of(weighed(sized, best, scale))
        : Optional.empty();
  }

  private static List<Sized> laid(
      List<ElectrodePair> pairs, CurveLearner.Learned seen, double unitAh) {
    EvenTable ah = seen.curve();
    EvenTable curve = new EvenTable(ah.start() / unitAh, ah.step() / unitAh, ah.values());
    SeenPart part =
        SeenPart.ofSeveral(
            curve, seen.fromAh() / unitAh + curve.step(), seen.toAh() / unitAh - curve.step());
    return pairs.parallelStream()
        .flatMap(pair -> BothElectrodes.of(pair, part, 1).stream())
        .map(both -> new Sized(both.size() * unitAh, both.squares()))
        .filter(one -> one.ah() > 0 && Double.isFinite(one.squares()))
        .toList();
  }

  /** Sizes weighed by how likely they are; the range spans all that may be. */
  private static StringSize weighed(List<Sized> sized, Sized best, double scale) {
    double weights = 0;
    double logs = 0;
    double low = best.ah();
    double high = best.ah();
    for (Sized one : sized) {
      double worse = (one.squares() - best.squares()) / scale;
      weights += Math.exp(-worse / 2);
      logs += Math.exp(-worse / 2) * Math.log(one.ah());
      if (worse < LIMIT) {
        low = Math.min(low, one.ah());
        high = Math.max(high, one.ah());
      }
    }
    return new StringSize(Math.exp(logs / weights), low, high);
  }

  private static Stream<ElectrodePair> pairs(PackDescription pack) {
    return pack.chemistry() == Chemistry.LFP && pack.openCircuit().isEmpty()
        ? HalfCells.graphites().stream()
            .flatMap(n -> HalfCells.of(Chemistry.LFP).stream().map(p -> new MixedPair(p, n)))
        : ElectrodePair.of(pack).stream();
  }

  /** A size and what the curve leaves that gave it. */
  private record Sized(double ah, double squares) {}

  /** A sloping curve: curves of usual cells in all sizes and places. */
  private static final class Layer {
    private final double fromAh;
    private final double toAh;
    private final double[] placeAh = new double[POINTS];
    private final double[] volt = new double[POINTS];
    private final double[] weight = new double[POINTS];
    private final List<EvenTable> curves;

    Layer(CurveLearner.Learned seen, PackDescription pack) {
      fromAh = seen.fromAh();
      toAh = seen.toAh();
      for (int i = 0; i < POINTS; i++) {
        placeAh[i] = fromAh + (toAh - fromAh) * (i + 0.5) / POINTS;
        volt[i] = seen.curve().at(placeAh[i]);
        double sd =
            Math.hypot(CURVE_V, seen.curve().slopeAt(placeAh[i]) * CURVE_PLACE * (toAh - fromAh));
        weight[i] = 1 / (sd * sd);
      }
      curves = pairs(pack).map(Layer::table).toList();
    }

    private static EvenTable table(ElectrodePair pair) {
      int n = 530;
      double[] values = new double[n + 1];
      for (int i = 0; i <= n; i++) {
        values[i] = pair.openCircuit((i - 15) / 500.0);
      }
      return new EvenTable(-BEYOND, 0.002, values);
    }

    StringSize lay() {
      double spanAh = toAh - fromAh;
      int sizes = (int) Math.ceil(Math.log(LARGEST / SMALLEST) / Math.log(SIZE_STEP));
      double[] misfit =
          IntStream.rangeClosed(0, sizes)
              .parallel()
              .mapToDouble(k -> misfit(spanAh * SMALLEST * Math.pow(SIZE_STEP, k)))
              .toArray();
      List<Sized> sized =
          IntStream.rangeClosed(0, sizes)
              .mapToObj(k -> new Sized(spanAh * SMALLEST * Math.pow(SIZE_STEP, k), misfit[k]))
              .toList();
      Sized best = Collections.min(sized, BEST);
      return weighed(sized, best, Math.max(1, best.squares() / POINTS) * POINTS / INDEPENDENT);
    }

    /** Weighted squares that the best curve of a size leaves. */
    private double misfit(double sizeAh) {
      double least = Double.POSITIVE_INFINITY;
      double lowest = toAh - BEYOND * sizeAh;
      double highest = fromAh + (1 + BEYOND) * sizeAh;
      for (double fullAh = lowest; fullAh <= highest; fullAh += PLACE_STEP * sizeAh) {
        for (EvenTable curve : curves) {
          double sum = 0;
          double one = 1 / (CONSTANT_V * CONSTANT_V);
          double squares = 0;
          for (int i = 0; i < POINTS; i++) {
            double off = volt[i] - curve.at(1 + (placeAh[i] - fullAh) / sizeAh);
            sum += weight[i] * off;
            one += weight[i];
            squares += weight[i] * off * off;
          }
          least = Math.min(least, squares - sum * sum / one);
        }
      }
      return least;
    }
  }
}
