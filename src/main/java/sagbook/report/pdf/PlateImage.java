package sagbook.report.pdf;

import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Locale;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** One plate as it stands on the paper. */
final class PlateImage implements SVGDrawer.SVGImage {
  private final Element svg;
  private final Lettering lettering;
  private final double dotsPerPixel;
  private final double width;
  private final double height;
  private final double scale;

  /**
   * A plate.
   *
   * @param svg as the page holds it
   * @param lettering the font of its words
   * @param wanted width on paper, dots; not positive for the plate's own
   * @param dotsPerPixel dots in a pixel of the style sheet
   */
  PlateImage(Element svg, Lettering lettering, double wanted, double dotsPerPixel) {
    this.svg = svg;
    this.lettering = lettering;
    this.dotsPerPixel = dotsPerPixel;
    List<String> box = List.of(svg.getAttribute("viewBox").split(" ", -1));
    double wide = Double.parseDouble(box.get(2));
    this.width = wanted > 0 ? wanted : wide * dotsPerPixel;
    this.scale = width / dotsPerPixel / wide;
    this.height = Double.parseDouble(box.get(3)) * scale * dotsPerPixel;
  }

  @Override
  public int getIntrinsicWidth() {
    return (int) width;
  }

  @Override
  public int getIntrinsicHeight() {
    return (int) height;
  }

  @Override
  public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
    device.drawWithGraphics(
        (float) x,
        (float) y,
        (float) (width / dotsPerPixel),
        (float) (height / dotsPerPixel),
        graphics -> {
          graphics.transform(AffineTransform.getScaleInstance(scale, scale));
          drawAll(svg, graphics);
        });
  }

  private void drawAll(Element parent, Graphics2D graphics) {
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element) {
        draw(element, graphics);
      }
    }
  }

  private void draw(Element element, Graphics2D graphics) {
    switch (element.getNodeName().toLowerCase(Locale.ROOT)) {
      case "g" -> {
        AffineTransform before = graphics.getTransform();
        graphics.transform(translation(element.getAttribute("transform")));
        drawAll(element, graphics);
        graphics.setTransform(before);
      }
      case "path" ->
          paint(
              PathData.shape(element.getAttribute("d")),
              PrintInk.of(element.getAttribute("class")),
              graphics);
      case "text" -> write(element, graphics);
      default -> throw new IllegalStateException("a plate holds a " + element.getNodeName());
    }
  }

  /** "translate(58 32)". */
  private static AffineTransform translation(String transform) {
    List<String> by = List.of(transform.replace("translate(", "").replace(")", "").split(" ", -1));
    return AffineTransform.getTranslateInstance(
        Double.parseDouble(by.get(0)), Double.parseDouble(by.get(1)));
  }

  private void write(Element text, Graphics2D graphics) {
    PrintInk ink = PrintInk.of(text.getAttribute("class"));
    String words = text.getTextContent();
    double wide = lettering.width(words, ink.size());
    double shift =
        switch (text.getAttribute("text-anchor")) {
          case "middle" -> -wide / 2;
          case "end" -> -wide;
          default -> 0;
        };
    double x = Double.parseDouble(text.getAttribute("x")) + shift;
    double y = Double.parseDouble(text.getAttribute("y"));
    paint(lettering.shape(words, ink.size(), x, y), ink, graphics);
  }

  private static void paint(Shape shape, PrintInk ink, Graphics2D graphics) {
    ink.line()
        .ifPresent(
            color -> {
              graphics.setColor(color);
              graphics.setStroke(
                  ink.dash().length == 0
                      ? new BasicStroke(ink.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
                      : new BasicStroke(
                          ink.width(),
                          BasicStroke.CAP_BUTT,
                          BasicStroke.JOIN_ROUND,
                          10,
                          ink.dash(),
                          0));
              graphics.draw(shape);
            });
    ink.fill()
        .ifPresent(
            color -> {
              graphics.setColor(color);
              graphics.fill(shape);
            });
  }
}
