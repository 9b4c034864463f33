/**
 * Pure mathematics on {@code double[]}: robust summaries, tables, least squares. Knows nothing of
 * batteries.
 */
@NullMarked
package sagbook.numeric;

import org.jspecify.annotations.NullMarked;
