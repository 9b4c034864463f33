/**
 * The folder that a check leaves behind: results.json, report.html and the tables, written whole or
 * not at all.
 */
@NullMarked
package sagbook.report;

import org.jspecify.annotations.NullMarked;
