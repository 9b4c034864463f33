package sagbook.report.pdf;

import java.awt.geom.Arc2D;
import java.awt.geom.Path2D;
import java.util.Scanner;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Reads the attribute {@code d} of a plate's paths: straight lines and half ellipses. */
final class PathData {
  private static final Pattern COMMAND = Pattern.compile("([MLHVhvaZ])([^MLHVhvaZ]*)");

  private PathData() {}

  static Path2D shape(String d) {
    Path2D.Double path = new Path2D.Double();
    COMMAND.matcher(d).results().forEach(command -> add(command, path));
    return path;
  }

  private static void add(MatchResult command, Path2D.Double path) {
    double[] by = numbers(command.group(2));
    double x = path.getCurrentPoint() == null ? 0 : path.getCurrentPoint().getX();
    double y = path.getCurrentPoint() == null ? 0 : path.getCurrentPoint().getY();
    switch (command.group(1)) {
      case "M" -> path.moveTo(by[0], by[1]);
      case "L" -> path.lineTo(by[0], by[1]);
      case "H" -> path.lineTo(by[0], y);
      case "V" -> path.lineTo(x, by[0]);
      case "h" -> path.lineTo(x + by[0], y);
      case "v" -> path.lineTo(x, y + by[0]);
      case "a" -> path.append(half(x, y, by), true);
      default -> path.closePath();
    }
  }

  /** Half an ellipse from here to as far across as its last but one number says. */
  private static Arc2D half(double x, double y, double[] by) {
    double across = by[5];
    return new Arc2D.Double(
        Math.min(x, x + across),
        y - by[1],
        2 * by[0],
        2 * by[1],
        across > 0 ? 180 : 0,
        180,
        Arc2D.OPEN);
  }

  private static double[] numbers(String text) {
    return new Scanner(text).tokens().mapToDouble(Double::parseDouble).toArray();
  }
}
