/**
 * From estimates to a decision: what is the matter with each cell, how much the string loses to it,
 * what to do first. The rules are data, in one place.
 */
@NullMarked
package sagbook.verdict;

import org.jspecify.annotations.NullMarked;
