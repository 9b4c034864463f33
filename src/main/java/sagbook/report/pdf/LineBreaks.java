package sagbook.report.pdf;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/**
 * Where a line may end: where Java's rules for English say so, behind a space, a stroke or a
 * hyphen. By themselves those rules would cut "25 °C" behind the ring and a negative number behind
 * its point.
 */
final class LineBreaks implements FSTextBreaker {
  private static final String ENDS = " /-\u2013";

  private final BreakIterator rules = BreakIterator.getLineInstance(Locale.ENGLISH);
  private String text = "";

  @Override
  public void setText(String newText) {
    text = newText;
    rules.setText(newText);
  }

  @Override
  public int next() {
    int end = rules.next();
    while (end > 0 && end < text.length() && !mayEnd(end)) {
      end = rules.next();
    }
    return end;
  }

  private boolean mayEnd(int at) {
    char last = text.charAt(at - 1);
    return Character.isWhitespace(last) || ENDS.indexOf(last) >= 0;
  }
}
