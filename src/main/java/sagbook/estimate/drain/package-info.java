/** What a cell loses by itself, where no current was logged to count it by. */
@NullMarked
package sagbook.estimate.drain;

import org.jspecify.annotations.NullMarked;
