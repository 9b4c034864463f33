package sagbook.report.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A page that asks for what lies outside gets nothing, and nobody hears of it. */
final class PdfFileTest {
  private static final Instant STAMP = Instant.parse("2026-10-01T00:00:00Z");

  /** One grey pixel as PNG. */
  private static final String PIXEL =
      "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==";

  @TempDir private Path folder;
  private final List<String> asked = new CopyOnWriteArrayList<>();
  private HttpServer server;
  private String outside;

  @BeforeEach
  void listen() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          asked.add(exchange.getRequestURI().toString());
          byte[] pixel = Base64.getDecoder().decode(PIXEL);
          exchange.sendResponseHeaders(200, pixel.length);
          exchange.getResponseBody().write(pixel);
          exchange.close();
        });
    server.start();
    outside = "http://127.0.0.1:" + server.getAddress().getPort();
  }

  @AfterEach
  void close() {
    server.stop(0);
  }

  @Test
  void nothingIsFetchedWhateverThePageAsksFor() throws IOException {
    String page =
        page(
            "<link rel='stylesheet' href='%1$s/sheet.css'/><style>@import url('%1$s/other.css');"
                + "@font-face { font-family: Other; src: url('%1$s/font.ttf'); }"
                + "body { background-image: url('%1$s/back.png'); }</style>",
            "<img src='%1$s/a.png' alt=''/>");
    byte[] pdf = PdfFile.of(page.formatted(outside), STAMP);
    assertEquals(List.of(), asked);
    assertEquals(0, images(pdf));
  }

  @Test
  void aDocumentTypeFetchesNothing() {
    String page =
        page("", "<p>text</p>").replace("<html", "<!DOCTYPE html SYSTEM '%s/a.dtd'><html");
    PdfFile.of(page.formatted(outside), STAMP);
    assertEquals(List.of(), asked);
  }

  @Test
  void aFileBesideThePageIsNotRead() throws IOException {
    Path image = folder.resolve("pixel.png");
    Files.write(image, Base64.getDecoder().decode(PIXEL));
    assertEquals(
        0, images(PdfFile.of(page("", "<img src='" + image.toUri() + "' alt=''/>"), STAMP)));
  }

  @Test
  void theSamePageGivesTheSameBytes() {
    String page = page("", "<p>text</p>");
    assertArrayEquals(PdfFile.of(page, STAMP), PdfFile.of(page, STAMP));
  }

  @Test
  void noLineEndsWithinANumberOrItsUnit() throws IOException {
    String words = "at 25\u00a0°C (\u22127.0\u00a0to\u00a0\u22123.9\u00a0%) ";
    for (int width = 20; width < 60; width++) {
      String style = "<style>p { width: " + width + "mm; }</style>";
      byte[] pdf = PdfFile.of(page(style, "<p>" + words.repeat(6) + "</p>"), STAMP);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        String text = new PDFTextStripper().getText(document);
        assertFalse(text.matches("(?s).*(°|\\.|\u2212|to|\\d)\\s*\\n\\s*(C|\\d|%).*"), text);
      }
    }
  }

  private static String page(String head, String body) {
    return "<html xmlns='http://www.w3.org/1999/xhtml'><head>"
        + "<style>body { font-family: Dossier; }</style>"
        + head
        + "</head><body>"
        + body
        + "</body></html>";
  }

  private static int images(byte[] pdf) throws IOException {
    int images = 0;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getXObjectNames()) {
          images += page.getResources().isImageXObject(name) ? 1 : 0;
        }
      }
    }
    return images;
  }
}
