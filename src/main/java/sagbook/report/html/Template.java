package sagbook.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import sagbook.report.words.Typesetting;

/** Fills a template and sets its sentences. */
final class Template {
  private Template() {}

  /** The template under this name, filled from a page. */
  static String filled(String name, Object page) {
    StringOutput text = new StringOutput();
    TemplateEngine.createPrecompiled(null, ContentType.Html, null, "sagbook.report.html.template")
        .render(name, page, new Setter(text));
    return text.toString();
  }

  /**
   * Escapes what is filled in, and sets it where it is a sentence. Attributes stay as they are, and
   * so do names from outside, which stand in {@code bdi} or head a row.
   */
  private static final class Setter extends OwaspHtmlTemplateOutput {
    private static final Set<String> NAMES = Set.of("bdi", "title", "th", "style", "script");

    private boolean sentence;

    Setter(StringOutput text) {
      super(text);
    }

    @Override
    public void setContext(@Nullable String tag, @Nullable String attribute) {
      super.setContext(tag, attribute);
      sentence = attribute == null && tag != null && !NAMES.contains(tag);
    }

    @Override
    public void writeUserContent(@Nullable String value) {
      super.writeUserContent(sentence && value != null ? Typesetting.of(value) : value);
    }
  }
}
