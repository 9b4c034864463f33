package sagbook.report.chart;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads a {@link Drawing} back as paths, one a series: lines that touch become one path, numbers
 * get one decimal, styles give way to the number of the series.
 */
final class DrawnShapes {

  /**
   * All that was drawn of one series.
   *
   * @param series its place in the plot, 0 for the first
   * @param path as in the attribute {@code d} of an SVG path
   */
  record Shape(int series, String path) {}

  private final List<Shape> shapes = new ArrayList<>();
  private final StringBuilder path = new StringBuilder();
  private String style = "";
  private String end = "";

  private DrawnShapes() {}

  static List<Shape> of(byte[] svg) {
    DrawnShapes drawn = new DrawnShapes();
    try {
      drawn.read(svg);
    } catch (XMLStreamException e) {
      throw new IllegalStateException("XChart's drawing can't be read back", e);
    }
    drawn.finish();
    return drawn.shapes;
  }

  private void read(byte[] svg) throws XMLStreamException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    XMLStreamReader in = factory.createXMLStreamReader(new ByteArrayInputStream(svg));
    boolean inside = false;
    while (in.hasNext()) {
      if (in.next() == XMLStreamConstants.START_ELEMENT) {
        String name = in.getLocalName();
        inside |= name.equals("g");
        if (inside && !name.equals("g")) {
          take(name, in);
        }
      }
    }
  }

  private void take(String name, XMLStreamReader in) {
    String itsStyle = color(in.getAttributeValue(null, "style"));
    if (!itsStyle.equals(style)) {
      finish();
      style = itsStyle;
    }
    switch (name) {
      case "line" -> line(in);
      case "ellipse" -> ellipse(in);
      case "rect" -> rectangle(in);
      case "path" -> {
        path.append(compact(in.getAttributeValue(null, "d")));
        end = "";
      }
      default -> throw new IllegalStateException("XChart drew a " + name);
    }
  }

  private void line(XMLStreamReader in) {
    String from = number(in, "x1") + " " + number(in, "y1");
    String to = number(in, "x2") + " " + number(in, "y2");
    if (!from.equals(end)) {
      path.append('M').append(from);
    }
    if (!to.equals(from)) {
      path.append('L').append(to);
    }
    end = to;
  }

  private void ellipse(XMLStreamReader in) {
    String rx = number(in, "rx");
    String ry = number(in, "ry");
    BigDecimal left = decimal(in, "cx").subtract(decimal(in, "rx"));
    String arc = "a" + rx + " " + ry + " 0 1 0 ";
    String across = plain(decimal(in, "rx").multiply(BigDecimal.valueOf(2)));
    path.append('M').append(plain(left)).append(' ').append(number(in, "cy"));
    path.append(arc).append(across).append(" 0").append(arc).append('-').append(across);
    path.append(" 0Z");
    end = "";
  }

  private void rectangle(XMLStreamReader in) {
    String width = number(in, "width");
    path.append('M').append(number(in, "x")).append(' ').append(number(in, "y"));
    path.append('h').append(width).append('v').append(number(in, "height"));
    path.append("h-").append(width).append('Z');
    end = "";
  }

  /** "M1.234,5.678 L2.345,6.789 Z" as "M1.2 5.7L2.3 6.8Z". */
  private static String compact(String d) {
    StringBuilder out = new StringBuilder();
    for (String token : d.replace(',', ' ').split(" ", -1)) {
      boolean command = !token.isEmpty() && Character.isLetter(token.charAt(0));
      String digits = command ? token.substring(1) : token;
      if (command) {
        out.append(token.charAt(0));
      } else {
        out.append(' ');
      }
      if (!digits.isEmpty()) {
        out.append(plain(new BigDecimal(digits)));
      }
    }
    return out.toString();
  }

  private void finish() {
    if (!path.isEmpty()) {
      shapes.add(new Shape(series(style), path.toString()));
    }
    path.setLength(0);
    end = "";
  }

  /** Reads {@code rgb(r,g,b)} as {@link Drawing#color} wrote it. */
  private static int series(String rgb) {
    int number = 0;
    for (String part : rgb.substring(rgb.indexOf('(') + 1, rgb.indexOf(')')).split(",", -1)) {
      number = number * 256 + Integer.parseInt(part);
    }
    return number;
  }

  /** The one colour of a style, whether it strokes or fills. */
  private static String color(String style) {
    String found = "";
    for (String declaration : style.split(";", -1)) {
      int colon = declaration.indexOf(':');
      if (colon > 0 && declaration.startsWith("rgb", colon + 1)) {
        found = declaration.substring(colon + 1);
      }
    }
    return found;
  }

  private static String number(XMLStreamReader in, String name) {
    return plain(decimal(in, name));
  }

  private static BigDecimal decimal(XMLStreamReader in, String name) {
    return new BigDecimal(in.getAttributeValue(null, name));
  }

  static String plain(BigDecimal number) {
    BigDecimal rounded = number.setScale(1, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }
}
