package sagbook.model;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the keeper says about log files whose meaning can't be guessed.
 *
 * @param filePattern which files it holds for: a file-name pattern with {@code *} and {@code ?}
 * @param delimiter between fields; empty means it is found from the file
 * @param decimalComma whether 3,3 means three point three; empty means it is found from the file
 * @param headerLine line with the column names, counted from 1; 0 means there is none and columns
 *     are called "column 1", "column 2" and so on; empty means it is found from the file
 * @param clock how times are written, in the words that {@code preview} uses; empty means it is
 *     found from the file
 * @param start when a log that counts seconds from its start began, ISO 8601; empty means not told
 * @param holdS how long a value holds in a log that writes only what changed, s; empty means the
 *     default
 * @param columns meaning by column name, such as "Z1" to "cell 1 voltage, mV"; a column that is not
 *     named is worked out from its name
 */
public record LogMapping(
    String filePattern,
    Optional<Character> delimiter,
    Optional<Boolean> decimalComma,
    Optional<Integer> headerLine,
    Optional<String> clock,
    Optional<String> start,
    Optional<Double> holdS,
    Map<String, String> columns) {
  public LogMapping {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }
}
