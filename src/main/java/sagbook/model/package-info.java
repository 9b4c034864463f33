/**
 * The words everything else speaks in: the pack and its limits, a block of samples, an estimate.
 *
 * <p>One set of units inside: volt, ampere, second, milliohm, ampere-hour, degree Celsius, charge
 * as a fraction of one. Charging current is positive. Conversions happen only where logs are read
 * and where reports are written. A missing sample is NaN; a missing result never is, it is an
 * {@link sagbook.model.Estimate.Unknown} with its reason.
 */
@NullMarked
package sagbook.model;

import org.jspecify.annotations.NullMarked;
