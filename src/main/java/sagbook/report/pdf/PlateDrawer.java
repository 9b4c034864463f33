package sagbook.report.pdf;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import java.io.File;
import java.util.List;
import org.w3c.dom.Element;

/**
 * Draws the SVG of the plates, and of nothing else, into a PDF. A general SVG library would bring
 * fifteen more and draw words with whatever fonts the machine has; the plates are paths and words.
 */
final class PlateDrawer implements SVGDrawer {
  private final Lettering lettering;

  PlateDrawer(Lettering lettering) {
    this.lettering = lettering;
  }

  @Override
  public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {
    // The plates have one font, which the lettering holds.
  }

  @Override
  public SVGImage buildSVGImage(
      Element svg, Box box, CssContext css, double width, double height, double dotsPerPixel) {
    return new PlateImage(svg, lettering, width, dotsPerPixel);
  }

  @Override
  public void addFontFile(File file, String family, Integer weight, FontStyle style) {
    // As above.
  }

  @Override
  public void close() {
    // Nothing is open.
  }
}
