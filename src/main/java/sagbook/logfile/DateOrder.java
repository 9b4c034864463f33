package sagbook.logfile;

import sagbook.wording.Words;

/** Order of day, month and year in a written date. */
enum DateOrder {
  YEAR_FIRST("year first"),
  DAY_FIRST("day first"),
  MONTH_FIRST("month first");

  private final String words;

  DateOrder(String words) {
    this.words = words;
  }

  /** As a column mapping has it. */
  String words() {
    return words;
  }

  /** As it is said to the keeper. */
  String spoken() {
    return Words.english().say("clock.order." + words.replace(' ', '-'));
  }
}
