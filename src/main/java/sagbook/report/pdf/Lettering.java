package sagbook.report.pdf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** Words as outlines of a font that comes with the program; the machine's fonts play no part. */
final class Lettering {
  private final TrueTypeFont font;
  private final CmapLookup glyphs;
  private final double unitsPerEm;

  private Lettering(TrueTypeFont font) throws IOException {
    this.font = font;
    this.glyphs = font.getUnicodeCmapLookup();
    this.unitsPerEm = font.getUnitsPerEm();
  }

  /** Reads a TrueType font. */
  static Lettering of(InputStream font) throws IOException {
    return new Lettering(
        new TTFParser(true).parse(RandomAccessReadBuffer.createBufferFromStream(font)));
  }

  /** Width of a line of words at a size, in the size's unit. */
  double width(String words, double size) {
    return words.codePoints().mapToDouble(this::advance).sum() * size / unitsPerEm;
  }

  /** Outlines of a line of words that begins at a place. */
  Path2D shape(String words, double size, double x, double y) {
    Path2D.Double all = new Path2D.Double();
    double scale = size / unitsPerEm;
    double at = x;
    for (int character : words.codePoints().toArray()) {
      AffineTransform place = AffineTransform.getTranslateInstance(at, y);
      place.scale(scale, -scale);
      outline(character, place, all);
      at += advance(character) * scale;
    }
    return all;
  }

  private double advance(int character) {
    try {
      return font.getAdvanceWidth(glyphs.getGlyphId(character));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void outline(int character, AffineTransform place, Path2D into) {
    try {
      GlyphData glyph = font.getGlyph().getGlyph(glyphs.getGlyphId(character));
      if (glyph != null) {
        into.append(glyph.getPath().getPathIterator(place), false);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
