package sagbook.report.pdf;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Objects;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A page of well-formed XHTML as PDF, plates and all. Nothing is fetched. The only font is one that
 * comes with the program, dates and identifier are the caller's: the same page gives the same
 * bytes. The program's own pages hold text, tables and plates; of anything else a picture is left
 * out, while an {@code object}, or in a plate any shape but paths and words, fails with an
 * exception.
 */
public final class PdfFile {
  /** Liberation Sans, which comes with PDFBox (SIL Open Font License). */
  private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  private PdfFile() {}

  /**
   * The file.
   *
   * @param xhtml the page; its style sheet asks for the font family "Dossier"
   * @param stamp stands in the file as the time it was made
   */
  public static byte[] of(String xhtml, Instant stamp) {
    XRLog.setLoggingEnabled(false);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.withHtmlContent(xhtml, null);
    builder.withProducer("sagbook");
    builder.useUriResolver((base, uri) -> null);
    builder.useUnicodeLineBreaker(new LineBreaks());
    builder.useFont(PdfFile::font, "Dossier", 400, FontStyle.NORMAL, true);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (InputStream font = font()) {
      builder.useSVGDrawer(new PlateDrawer(Lettering.of(font)));
      write(builder, stamp, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static void write(PdfRendererBuilder builder, Instant stamp, ByteArrayOutputStream out)
      throws IOException {
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.layout();
      try (PDDocument document = renderer.createPDFKeepOpen()) {
        Calendar time = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        time.setTimeInMillis(stamp.toEpochMilli());
        document.getDocumentInformation().setCreationDate(time);
        document.getDocumentInformation().setModificationDate(time);
        document.setDocumentId(stamp.toEpochMilli());
        document.save(out);
      }
    }
  }

  private static InputStream font() {
    return Objects.requireNonNull(PDDocument.class.getResourceAsStream(FONT), FONT);
  }
}
