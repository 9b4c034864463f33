/** Whether a board's temperature can be believed. */
@NullMarked
package sagbook.estimate.temperature;

import org.jspecify.annotations.NullMarked;
