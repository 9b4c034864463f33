package sagbook.report.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a plot draws: axes, series, and words inside the frame.
 *
 * @param x horizontal axis
 * @param y vertical axis
 * @param series in drawing order
 * @param notes words beside points
 */
record Plot(Axis x, Axis y, List<Series> series, List<Note> notes) {

  /**
   * A row of points that belong together.
   *
   * @param ink whose it is
   * @param x horizontal values
   * @param y vertical values; NaN breaks a line
   * @param tip what a pointer at it reads; may be empty
   */
  record Series(Ink ink, double[] x, double[] y, String tip) {
    Series {
      if (x.length != y.length) {
        throw new IllegalArgumentException(x.length + " x for " + y.length + " y");
      }
    }

    boolean isEmpty() {
      for (int i = 0; i < x.length; i++) {
        if (Double.isFinite(x[i]) && Double.isFinite(y[i])) {
          return false;
        }
      }
      return true;
    }
  }

  /** Where a note stands. */
  enum Place {
    /** In the right margin, at the height of its point, moved apart from other notes. */
    MARGIN,
    /** Just above its point, or under what stands there, wherever there is room. */
    ABOVE,
    /** To the right of its point. */
    START,
    /** Standing on the lower edge of the frame. */
    FLOOR,
    /** On the lower edge of the frame, beside an upright line. */
    FOOT
  }

  /**
   * Words beside a point.
   *
   * @param place where
   * @param x value on the horizontal axis
   * @param y value on the vertical axis
   * @param text the words
   * @param strong whether they are picked out
   */
  record Note(Place place, double x, double y, String text, boolean strong) {}

  Plot {
    series = List.copyOf(series);
    notes = List.copyOf(notes);
  }

  /** Collects series and notes. */
  static final class Sketch {
    private final List<Series> series = new ArrayList<>();
    private final List<Note> notes = new ArrayList<>();

    /** A line, unless it has no point. */
    Sketch line(Ink ink, double[] x, double[] y, String tip) {
      Series line = new Series(ink, x, y, tip);
      if (!line.isEmpty()) {
        series.add(line);
      }
      return this;
    }

    Sketch point(Ink ink, double x, double y, String tip) {
      return line(ink, new double[] {x}, new double[] {y}, tip);
    }

    Sketch span(Ink ink, double x, double low, double high, String tip) {
      return line(ink, new double[] {x, x}, new double[] {low, high}, tip);
    }

    Sketch note(Place place, double x, double y, String text, boolean strong) {
      notes.add(new Note(place, x, y, text, strong));
      return this;
    }

    /** The plot: single courses lie under all else, picked series over all else. */
    Plot on(Axis x, Axis y) {
      List<Series> ordered = new ArrayList<>(series);
      ordered.sort(Comparator.comparingInt(one -> layer(one.ink())));
      return new Plot(x, y, ordered, notes);
    }

    private static int layer(Ink ink) {
      return ink.role() == Role.TRACE ? 0 : ink.pick() > 0 ? 2 : 1;
    }
  }
}
