package sagbook.logfile;

/** Order of day, month and year in a written date. */
enum DateOrder {
  YEAR_FIRST("year first"),
  DAY_FIRST("day first"),
  MONTH_FIRST("month first");

  private final String words;

  DateOrder(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
