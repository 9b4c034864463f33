/**
 * The way the report writes numbers and what comes from outside: rounded to what the interval
 * supports, text made visible.
 */
@NullMarked
package sagbook.report.words;

import org.jspecify.annotations.NullMarked;
