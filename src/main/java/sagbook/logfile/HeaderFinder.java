package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Finds the line of column names above the first row of values. */
final class HeaderFinder {
  private static final Pattern MOMENT =
      Pattern.compile(
          "[0-9]{1,4}[-/. ][0-9A-Za-z]{1,9}[-/. ][0-9]{1,4}.*|[0-9]{8}T[0-9]{4,6}.*"
              + "|[0-9]{1,2}:[0-9]{2}(:.*)?");

  private final List<String[]> rows;
  private final int usual;
  private final NumberReader numbers;

  HeaderFinder(List<String[]> rows, int usual, NumberReader numbers) {
    this.rows = rows;
    this.usual = usual;
    this.numbers = numbers;
  }

  /** Index of the first row of values; -1 when there is none. */
  int firstDataIndex() {
    for (int i = 0; i < rows.size(); i++) {
      if (Math.abs(rows.get(i).length - usual) <= 1 && isData(rows.get(i))) {
        return i;
      }
    }
    return -1;
  }

  /** Index of the line of names; -1 when there is none. */
  int headerIndex() {
    int data = firstDataIndex();
    int last = data < 0 ? rows.size() : data;
    for (int i = last - 1; i >= 0; i--) {
      String[] row = rows.get(i);
      if (isNames(row) && !isUnits(row)) {
        return i;
      }
    }
    return -1;
  }

  private boolean isNames(String[] row) {
    if (row.length < 2 || Math.abs(row.length - usual) > 1) {
      return false;
    }
    int words = 0;
    for (String field : row) {
      words += hasLetter(field) ? 1 : 0;
    }
    return words >= 2 && words * 2 >= row.length;
  }

  /** Units in a line of their own below the names. */
  List<String> unitsBelow(int header) {
    if (header + 1 < rows.size() && isUnits(rows.get(header + 1))) {
      return List.of(rows.get(header + 1));
    }
    return List.of();
  }

  private static boolean isUnits(String[] row) {
    int units = 0;
    for (String field : row) {
      String bare = field.replaceAll("[\\[\\]()]", "");
      if (Unit.find(bare).isPresent()) {
        units++;
      } else if (!bare.isBlank() && !bare.equals("-") && bare.length() > 12) {
        return false;
      }
    }
    return units >= 2 && units * 2 >= row.length - 1;
  }

  /** Most fields are numbers or moments, and at least one is. */
  private boolean isData(String[] row) {
    int numeric = 0;
    int words = 0;
    for (String field : row) {
      if (!Double.isNaN(numbers.read(field)) || isMoment(field)) {
        numeric++;
      } else if (!NumberReader.isMissing(field.toCharArray(), 0, field.length())) {
        words++;
      }
    }
    return numeric > 0 && numeric >= words && !namesTime(row);
  }

  private static boolean namesTime(String[] row) {
    for (String field : row) {
      if (field.length() < 40 && NameReader.read(field).quantity() == Quantity.TIME) {
        return true;
      }
    }
    return false;
  }

  private static boolean isMoment(String field) {
    return field.length() >= 5 && field.length() <= 48 && MOMENT.matcher(field).matches();
  }

  private static boolean hasLetter(String field) {
    return field.codePoints().anyMatch(Character::isLetter) && !isMoment(field);
  }

  /** A header that was commented out. */
  static List<String> withoutCommentSign(String[] names) {
    List<String> bare = new ArrayList<>(List.of(names));
    String first = bare.get(0);
    if (first.startsWith("#") || first.startsWith("%") || first.startsWith("//")) {
      bare.set(0, first.replaceFirst("^(#+|%+|//)\\s*", ""));
    }
    return bare;
  }
}
