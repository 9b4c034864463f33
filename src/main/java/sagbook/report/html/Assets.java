package sagbook.report.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/**
 * The page's style sheet and script, and the content-security policy that admits nothing else: no
 * network, no other script, no other style.
 *
 * @param style the style sheet
 * @param script the script
 */
public record Assets(String style, String script) {

  /** Those that come with the program. */
  static Assets own() {
    return new Assets(resource("page.css"), resource("page.js"));
  }

  /** Those of the page that becomes a PDF: a style sheet for paper, no script. */
  static Assets printed() {
    return onPaper("print.css");
  }

  /** Those of the dossier, which looks on a screen as it does on paper. */
  static Assets dossier() {
    return onPaper("dossier.css");
  }

  private static Assets onPaper(String own) {
    return new Assets(resource("paper.css") + resource(own), "");
  }

  /** Content of the page's policy. */
  public String policy() {
    return "default-src 'none'; style-src '"
        + hash(style)
        + "'; script-src '"
        + hash(script)
        + "'; base-uri 'none'; form-action 'none'";
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** A text that comes with the program. */
  private static String resource(String name) {
    try (InputStream in = Assets.class.getResourceAsStream("/sagbook/report/" + name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
