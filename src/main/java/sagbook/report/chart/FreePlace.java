package sagbook.report.chart;

import java.util.ArrayList;
import java.util.List;

/** Finds room for a few words at a point, so that they cover no mark, line or other words. */
final class FreePlace {
  private static final double ASCENT = 11;
  private static final double DESCENT = 4;
  private static final double AIR = 9;
  private static final double STEP = 3;

  /**
   * Words that stand aside of their point have to be so near that nobody takes them for others'.
   */
  private static final double NEAR = 30;

  /** A rectangle, px. */
  private record Box(double left, double top, double right, double bottom) {
    boolean touches(Box other) {
      return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
  }

  private final Frame frame;
  private final List<Box> taken = new ArrayList<>();

  FreePlace(Frame frame) {
    this.frame = frame;
    for (Plot.Series series : frame.plot().series()) {
      switch (series.ink().role()) {
        case MARK, OTHER_MARK, SPAN, BAR, RULE -> taken.add(around(series));
        case CURVE, TRACE, DAY -> {
          // Words stand over curves, on a rim of paper.
        }
      }
    }
  }

  private Box around(Plot.Series series) {
    double left = Double.POSITIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < series.x().length; i++) {
      left = Math.min(left, frame.x(series.x()[i]));
      right = Math.max(right, frame.x(series.x()[i]));
      top = Math.min(top, frame.y(series.y()[i]));
      bottom = Math.max(bottom, frame.y(series.y()[i]));
    }
    double rim = series.ink().role() == Role.RULE ? 0.5 : 4;
    return new Box(left - rim, top - 1, right + rim, bottom + 1);
  }

  /**
   * Where words stand.
   *
   * @param x their middle, px
   * @param baseline their line, px
   */
  record Place(double x, double baseline) {}

  /**
   * A free place over a point, or else under it, or else higher or a little aside; where there is
   * none, over what else is there, for a name far off would name another.
   */
  Place near(Plot.Note note) {
    double x = frame.x(note.x());
    double half = Frame.length(note.text()) / 2;
    double above = frame.y(note.y()) - AIR;
    double below = foot(x) + AIR + ASCENT;
    if (isFree(x, half, above)) {
      return take(x, half, above);
    }
    if (isFree(x, half, below) && below < frame.floor() - DESCENT) {
      return take(x, half, below);
    }
    for (double at = above; at > frame.top() - DESCENT; at -= STEP) {
      for (double aside : new double[] {0, half, -half}) {
        boolean plain = aside == 0 || above - at < NEAR;
        if (plain && isFree(x + aside, half, at)) {
          return take(x + aside, half, at);
        }
      }
    }
    return take(x, half, above);
  }

  /** The lowest point of what stands at this place. */
  private double foot(double x) {
    return taken.stream()
        .filter(box -> box.left < x && x < box.right && box.right - box.left < 30)
        .mapToDouble(Box::bottom)
        .max()
        .orElse(frame.floor());
  }

  private boolean isFree(double x, double half, double baseline) {
    Box words = box(x, half, baseline);
    return taken.stream().noneMatch(words::touches);
  }

  private Place take(double x, double half, double baseline) {
    taken.add(box(x, half, baseline));
    return new Place(x, baseline);
  }

  private static Box box(double x, double half, double baseline) {
    return new Box(x - half, baseline - ASCENT, x + half, baseline + DESCENT);
  }
}
