/**
 * The report's plates: charts drawn by XChart without a screen and without a font, taken over into
 * SVG that stands inside a page, follows its light and dark colours and is the same to the byte on
 * every machine. Each comes with a title that states what it shows, a text alternative and the
 * table behind it.
 */
@NullMarked
package sagbook.report.chart;

import org.jspecify.annotations.NullMarked;
