/**
 * Brings logs of one battery onto one clock: steps of current in one log and steps of voltage in
 * another are the same moments, so their distance is the distance of the clocks.
 */
@NullMarked
package sagbook.align;

import org.jspecify.annotations.NullMarked;
