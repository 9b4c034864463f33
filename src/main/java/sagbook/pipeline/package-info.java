/** The chain itself: one method that reads as the list of stages. */
@NullMarked
package sagbook.pipeline;

import org.jspecify.annotations.NullMarked;
