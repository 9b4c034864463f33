/**
 * The report's wording, all from one resource file, and the way it writes numbers: rounded to what
 * the interval supports, text from outside made visible.
 */
@NullMarked
package sagbook.report.words;

import org.jspecify.annotations.NullMarked;
