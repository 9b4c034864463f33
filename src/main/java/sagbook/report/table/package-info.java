/** Result tables as CSV files that a spreadsheet opens without running anything in them. */
@NullMarked
package sagbook.report.table;

import org.jspecify.annotations.NullMarked;
