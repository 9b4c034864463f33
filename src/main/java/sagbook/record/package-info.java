/**
 * What is kept of a check: the results as one immutable tree, its JSON form (the contract that
 * scripts read) and its tables (cells by quantities by months).
 */
@NullMarked
package sagbook.record;

import org.jspecify.annotations.NullMarked;
