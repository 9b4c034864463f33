/**
 * What was wrong with what came in: typed, counted, with file, line and column, and the one
 * sentence that lets the keeper repair it.
 */
@NullMarked
package sagbook.issue;

import org.jspecify.annotations.NullMarked;
