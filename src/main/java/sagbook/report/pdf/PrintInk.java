package sagbook.report.pdf;

import java.awt.Color;
import java.util.List;
import java.util.Optional;

/**
 * How a shape with certain classes looks on paper: the print colours of page.css.
 *
 * @param line colour of its line; empty for none
 * @param width of the line, px
 * @param dash of the line; empty for a whole one
 * @param fill colour of its inside; empty for none
 * @param size of its words, px
 */
record PrintInk(Optional<Color> line, float width, float[] dash, Optional<Color> fill, float size) {
  private static final Color PAPER = Color.WHITE;
  private static final Color INK = Color.BLACK;
  private static final Color SOFT = new Color(0x444444);
  private static final Color HAIR = new Color(0xaaaaaa);
  private static final Color CURVE = new Color(0x777777);
  private static final Color BAR = new Color(0x999999);
  private static final List<Color> PICKS =
      List.of(INK, new Color(0x0a4c86), new Color(0xa8410a), new Color(0x6a2c8c), INK);
  private static final float[] WHOLE = {};
  private static final List<float[]> DASHES =
      List.of(WHOLE, WHOLE, new float[] {9, 3}, new float[] {2.5f, 2.5f}, new float[] {9, 3, 2, 3});

  /** That of an element with this attribute {@code class}. */
  static PrintInk of(String classes) {
    List<String> names = List.of(classes.split(" ", -1));
    int pick = names.contains("pick") ? pick(names) : 0;
    Color own = PICKS.get(pick);
    return switch (names.get(0)) {
      case "axis" -> line(INK, 1, WHOLE);
      case "grid" -> line(HAIR, 0.6f, WHOLE);
      case "curve" -> line(pick == 0 ? CURVE : own, pick == 0 ? 0.9f : 2.4f, DASHES.get(pick));
      case "day" -> line(CURVE, names.contains("slim") ? 4 : 8, WHOLE);
      case "trace" -> line(pick == 0 ? CURVE : own, 0.35f, WHOLE);
      case "span" -> line(pick == 0 ? SOFT : own, pick == 0 ? 1.6f : 2.4f, WHOLE);
      case "bar" -> line(pick == 0 ? BAR : own, breadth(names), WHOLE);
      case "rule" -> line(INK, 0.8f, new float[] {7, 3});
      case "mark" -> fill(pick == 0 ? SOFT : own, 13);
      case "other-mark" ->
          new PrintInk(Optional.of(pick == 0 ? SOFT : own), 1.6f, WHOLE, Optional.of(PAPER), 13);
      case "tick", "note" ->
          names.contains("strong")
              ? new PrintInk(Optional.of(PAPER), 3, WHOLE, Optional.of(INK), 12)
              : fill(SOFT, 12);
      case "title" -> fill(SOFT, 12.5f);
      default -> throw new IllegalStateException("no ink for " + classes);
    };
  }

  private static float breadth(List<String> names) {
    return names.contains("slim") ? 5 : names.contains("broad") ? 26 : 11;
  }

  private static int pick(List<String> names) {
    return names.stream()
        .filter(name -> name.matches("pick\\d"))
        .mapToInt(name -> name.charAt(4) - '0')
        .findFirst()
        .orElse(0);
  }

  private static PrintInk line(Color color, float width, float[] dash) {
    return new PrintInk(Optional.of(color), width, dash, Optional.empty(), 13);
  }

  private static PrintInk fill(Color color, float size) {
    return new PrintInk(Optional.empty(), 0, WHOLE, Optional.of(color), size);
  }
}
