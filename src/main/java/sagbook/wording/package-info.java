/**
 * What is said to people: one resource file holds the sentences, looked up by key and filled in. A
 * translation is one file. It touches nothing, so that every stage from the estimates on may use
 * it.
 */
@NullMarked
package sagbook.wording;

import org.jspecify.annotations.NullMarked;
