package sagbook.packfile;

import java.util.List;
import java.util.Locale;

/** Finds the known word that somebody probably meant. */
final class Spelling {
  private Spelling() {}

  static String nearest(String word, List<String> known) {
    String best = known.get(0);
    for (String candidate : known) {
      if (distance(word, candidate) < distance(word, best)) {
        best = candidate;
      }
    }
    return best;
  }

  /**
   * Fewest insertions, deletions and replacements that turn one word into the other, ignoring case.
   *
   * <p>V. I. Levenshtein, Soviet Physics Doklady 10 (1966) 707; the row-by-row scheme of Wagner and
   * Fischer, J. ACM 21 (1974) 168.
   */
  static int distance(String from, String to) {
    String a = from.toLowerCase(Locale.ROOT);
    String b = to.toLowerCase(Locale.ROOT);
    if (a.length() > 100) {
      return a.length();
    }
    int[] previous = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replaced, Math.min(previous[j], row[j - 1]) + 1);
      }
      previous = row;
    }
    return previous[b.length()];
  }
}
