package sagbook.report.pdf;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/**
 * Where a line may end: wherever Java's rules for English say so, but not within "25 °C", which
 * they would cut behind the ring.
 */
final class LineBreaks implements FSTextBreaker {
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
    while (end > 0 && end < text.length() && text.charAt(end - 1) == '°') {
      end = rules.next();
    }
    return end;
  }
}
