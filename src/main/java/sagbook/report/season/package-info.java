/**
 * A season for notebooks: the results of one check a month as tidy tables, a dictionary of their
 * columns, and a notebook that draws them.
 *
 * <p>In: one {@link sagbook.record.CheckResult} a month. Out: tables and texts; nothing is written
 * here.
 */
@NullMarked
package sagbook.report.season;

import org.jspecify.annotations.NullMarked;
