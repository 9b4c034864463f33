package sagbook.report.chart;

/**
 * Whose a series is. What it looks like is the style sheet's business.
 *
 * @param role what it stands for
 * @param cell its cell, 1 for the first; 0 for something common to all
 * @param pick 1 and up for a cell that is picked out; 0 for the others
 */
record Ink(Role role, int cell, int pick) {
  String classes() {
    return pick == 0 ? role.className() : role.className() + " pick pick" + pick;
  }
}
