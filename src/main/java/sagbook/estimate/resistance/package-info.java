/**
 * DC resistance of every cell from all current steps of the log, at a stated pulse time, brought to
 * 25 °C and mid charge; and whether it sits in the cell or in a joint.
 */
@NullMarked
package sagbook.estimate.resistance;

import org.jspecify.annotations.NullMarked;
