package sagbook.report.chart;

import java.util.List;

/**
 * Where a plot lies on its paper, in px: the frame around what is drawn, with room for words.
 *
 * @param plot what is drawn
 * @param width of the whole
 * @param height of the whole
 * @param left room for the labels of the vertical axis
 * @param right room for the words in the margin
 */
record Frame(Plot plot, int width, int height, int left, int right) {
  private static final int TOP = 32;
  private static final int BOTTOM = 50;
  private static final int WIDE = 640;

  /** A little less than the narrowest phones have. */
  private static final int NARROW = 328;

  /** Width of a letter, px; that of a wide sans-serif, so that nothing is cut elsewhere. */
  private static final double LETTER = 7;

  /** The drawing for a desk or for paper; plates stand under each other with equal margins. */
  static Frame wide(Plot plot, int height) {
    return new Frame(plot, WIDE, height, 58, 94);
  }

  /** The drawing for a phone; margins are as narrow as the words in them allow. */
  static Frame narrow(Plot plot, int height) {
    List<Axis.Tick> across = plot.x().ticks();
    double left = across.isEmpty() ? 0 : length(across.get(0).label()) / 2;
    for (Axis.Tick tick : plot.y().ticks()) {
      left = Math.max(left, length(tick.label()));
    }
    double right = across.isEmpty() ? 0 : length(across.get(across.size() - 1).label()) / 2;
    for (Plot.Note note : plot.notes()) {
      right = note.place() == Plot.Place.MARGIN ? Math.max(right, length(note.text())) : right;
    }
    return new Frame(plot, NARROW, height, (int) left + 12, (int) right + 9);
  }

  /** Length of a line of words, px, rather more than less. */
  static double length(String words) {
    return words.length() * LETTER;
  }

  boolean isWide() {
    return width == WIDE;
  }

  int top() {
    return TOP;
  }

  int plotWidth() {
    return width - left - right;
  }

  int plotHeight() {
    return height - TOP - BOTTOM;
  }

  int floor() {
    return TOP + plotHeight();
  }

  /** Place of a value on the horizontal axis. */
  double x(double value) {
    return left + value * pitch() - plot.x().low() * pitch();
  }

  /** Place of a value on the vertical axis. */
  double y(double value) {
    double share = (value - plot.y().low()) / (plot.y().high() - plot.y().low());
    return TOP + (1 - share) * plotHeight();
  }

  /** Length of one on the horizontal axis: of a cell or of a day. */
  double pitch() {
    return plotWidth() / (plot.x().high() - plot.x().low());
  }
}
