package sagbook.estimate.capacity;

import sagbook.numeric.EvenTable;

/**
 * The part of a string's curve that was seen, charges as shares of a capacity.
 *
 * @param curve V along the charge axis
 * @param from lowest place that is used; none is where it is no lower than {@code to}
 * @param shared lowest place that several cells showed
 * @param to highest place
 * @param lost lithium that the cell which alone showed what lies below {@code shared} lost beyond
 *     its neighbours: its positive electrode lies so much lower on the axis, at least 0
 */
record SeenPart(EvenTable curve, double from, double shared, double to, double lost) {
  /** Sound cells of a string stand apart by less. Common practice, no source. */
  private static final double APART = 0.02;

  /** What several cells showed of a curve, without its outermost bins. */
  static SeenPart ofSeveral(CellCurve curve, double unitAh) {
    SeenPart all = of(curve, 0, unitAh);
    return ofSeveral(all.curve, all.shared, all.to);
  }

  /** What several cells showed, up to a place. */
  static SeenPart ofSeveral(EvenTable curve, double from, double to) {
    return new SeenPart(curve, from, from, to, 0);
  }

  /**
   * What was seen of a curve, without its outermost bins.
   *
   * @param lostAh lithium that the cell which came lowest lost beyond its neighbours, Ah
   * @param unitAh capacity that charges are shares of, Ah
   */
  static SeenPart of(CellCurve curve, double lostAh, double unitAh) {
    EvenTable ah = curve.whole();
    EvenTable whole = new EvenTable(ah.start() / unitAh, ah.step() / unitAh, ah.values());
    double lowest = curve.visitedFromAh() / unitAh + whole.step();
    double shared = curve.sharedFromAh() / unitAh + whole.step();
    double to = curve.visitedToAh() / unitAh - whole.step();
    // Of two cells neither is said to be alone anywhere.
    if (shared >= to) {
      return ofSeveral(whole, lowest, to);
    }
    return shared - lowest < APART
        ? ofSeveral(whole, shared, to)
        : new SeenPart(whole, lowest, shared, to, Math.max(0, lostAh) / unitAh);
  }

  /** How much lower than usual the positive electrode lies of whoever showed a place. */
  double lostAt(double place) {
    return place < shared ? lost : 0;
  }

  /** The highest place that is no further than full. */
  double end(double fullV) {
    double end = to;
    while (end - curve.step() > shared && curve.at(end) > fullV) {
      end -= curve.step();
    }
    return end;
  }

  /** Level of the flat part before the knee that leads to a place, V. */
  double flatV(double place) {
    return curve.at(Math.max(shared, CurveSplit.flattest(curve, place, 1)));
  }

  /** How far below a place the curve lies so much lower, above 0; NaN where it was not seen to. */
  double width(double place, double volt) {
    double target = curve.at(place) - volt;
    double below = place;
    while (below > shared && curve.at(below) > target) {
      below -= curve.step();
    }
    if (!(volt > 0) || below <= shared) {
      return Double.NaN;
    }
    double rise = curve.at(below + curve.step()) - curve.at(below);
    double beyond = rise > 0 ? (target - curve.at(below)) / rise * curve.step() : 0;
    return place - below - Math.max(0, Math.min(beyond, curve.step()));
  }
}
