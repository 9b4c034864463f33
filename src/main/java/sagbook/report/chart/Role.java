package sagbook.report.chart;

import java.util.Locale;

/** What a line or mark of a plot stands for; the page's style sheet decides how it looks. */
enum Role {
  /** A course over charge or time. */
  CURVE,
  /** One of many courses behind a curve. */
  TRACE,
  /** An amount of one day, drawn as a bar. */
  DAY,
  /** A best value. */
  MARK,
  /** An interval or a span between extremes. */
  SPAN,
  /** A best value of another kind than {@link #MARK}, drawn hollow. */
  OTHER_MARK,
  /** A quantity drawn as a broad bar from zero. */
  BAR,
  /** A limit or a reference that concerns all cells. */
  RULE;

  /** Its name as a class in the style sheet. */
  String className() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
