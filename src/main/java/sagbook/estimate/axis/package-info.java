/**
 * Where on the charge axis the string was at each moment: the charge counter with the current
 * sensor's offset taken out.
 */
@NullMarked
package sagbook.estimate.axis;

import org.jspecify.annotations.NullMarked;
