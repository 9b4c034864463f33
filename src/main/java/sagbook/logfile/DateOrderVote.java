package sagbook.logfile;

import java.util.List;

/**
 * Decides whether the day or the month comes first from all dates at hand.
 *
 * @param order the decision
 * @param settled whether the dates themselves settle it
 */
record DateOrderVote(DateOrder order, boolean settled) {
  static DateOrderVote of(List<String[]> rows, int field) {
    int dayFirst = 0;
    int monthFirst = 0;
    boolean slashed = false;
    boolean halves = false;
    for (String[] row : rows) {
      String value = field < row.length ? row[field] : "";
      if (value.matches("[0-9]{4}.*")) {
        return new DateOrderVote(DateOrder.YEAR_FIRST, true);
      }
      slashed |= value.contains("/");
      halves |= value.toLowerCase(java.util.Locale.ROOT).endsWith("m");
      String[] parts = value.split("[-/. ]", 3);
      if (parts.length == 3 && parts[0].matches("[0-9]{1,2}") && parts[1].matches("[0-9]{1,2}")) {
        dayFirst += Integer.parseInt(parts[0]) > 12 ? 1 : 0;
        monthFirst += Integer.parseInt(parts[1]) > 12 ? 1 : 0;
      }
    }
    if (dayFirst > 0 || monthFirst > 0) {
      boolean day = dayFirst >= monthFirst;
      return new DateOrderVote(day ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST, true);
    }
    boolean american = slashed && halves;
    return new DateOrderVote(american ? DateOrder.MONTH_FIRST : DateOrder.DAY_FIRST, !slashed);
  }

  String words() {
    return settled ? order.spoken() : ClockPlan.assumption(order);
  }
}
