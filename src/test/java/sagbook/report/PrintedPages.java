package sagbook.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** What stands on each page of a PDF, and how far down. */
final class PrintedPages {
  /** A page whose words end above this share of its height looks half empty. */
  static final double FILLED = 0.55;

  private PrintedPages() {}

  /** The text of each page. */
  static List<String> texts(PDDocument document) throws IOException {
    List<String> pages = new ArrayList<>();
    PDFTextStripper stripper = new PDFTextStripper();
    for (int page = 1; page <= document.getNumberOfPages(); page++) {
      stripper.setStartPage(page);
      stripper.setEndPage(page);
      pages.add(stripper.getText(document).strip());
    }
    return pages;
  }

  /** Pages that are half empty though more follows. */
  static List<Integer> halfEmpty(PDDocument document) throws IOException {
    List<Integer> pages = new ArrayList<>();
    for (int page = 2; page < document.getNumberOfPages(); page++) {
      if (foot(document, page) <= FILLED) {
        pages.add(page);
      }
    }
    return pages;
  }

  /** How far down a page its last words but the page number stand, as a share of its height. */
  private static double foot(PDDocument document, int page) throws IOException {
    return furthest(
        document,
        page,
        text -> {
          double share = text.getY() / text.getPageHeight();
          return share < 0.94 ? share : 0;
        });
  }

  /** How far to the right any page has words, as a share of its width. */
  static double right(PDDocument document) throws IOException {
    double right = 0;
    for (int page = 1; page <= document.getNumberOfPages(); page++) {
      right =
          Math.max(
              right,
              furthest(
                  document, page, text -> (text.getX() + text.getWidth()) / text.getPageWidth()));
    }
    return right;
  }

  private static double furthest(
      PDDocument document, int page, ToDoubleFunction<TextPosition> place) throws IOException {
    double[] furthest = {0};
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition text) {
            furthest[0] = Math.max(furthest[0], place.applyAsDouble(text));
          }
        };
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.getText(document);
    return furthest[0];
  }
}
