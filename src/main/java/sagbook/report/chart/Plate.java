package sagbook.report.chart;

/**
 * A chart, ready for the page.
 *
 * @param kind which of the plates it is, such as {@code resistance}
 * @param title a sentence that states what it shows
 * @param caption how to read it
 * @param svg markup that may stand inside HTML as it is
 * @param alternative what it shows, in words and numbers
 * @param table the numbers behind it
 */
public record Plate(
    String kind, String title, String caption, String svg, String alternative, DataTable table) {}
