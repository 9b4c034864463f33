/**
 * Capacity, charge offset, self-discharge and voltage error of every cell, from the way its voltage
 * differs from its neighbours' along the charge axis.
 */
@NullMarked
package sagbook.estimate.capacity;

import org.jspecify.annotations.NullMarked;
