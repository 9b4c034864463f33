package sagbook.logfile;

import java.util.List;
import java.util.regex.Pattern;

/** File-name patterns in which {@code *} stands for any text and {@code ?} for one character. */
final class NamePattern {
  private NamePattern() {}

  /** A pattern with a slash is matched against the name as given, others against its last part. */
  static boolean anyMatches(List<String> patterns, LogSource source) {
    String name = source.name();
    String last = name.substring(name.lastIndexOf('/') + 1);
    for (String pattern : patterns) {
      Pattern regex = regex(pattern);
      if (regex.matcher(pattern.indexOf('/') >= 0 ? name : last).matches()) {
        return true;
      }
    }
    return false;
  }

  private static Pattern regex(String pattern) {
    StringBuilder regex = new StringBuilder(pattern.indexOf('/') >= 0 ? "(.*/)?" : "");
    for (int i = 0; i < pattern.length(); i++) {
      char c = pattern.charAt(i);
      if (c == '*') {
        regex.append(".*");
      } else if (c == '?') {
        regex.append('.');
      } else {
        regex.append(Pattern.quote(String.valueOf(c)));
      }
    }
    return Pattern.compile(regex.toString(), Pattern.DOTALL);
  }
}
