/**
 * From evidence to quantities with intervals. Each sub-package is one estimator and none uses
 * another; {@link sagbook.estimate.BankEstimates} is what they yield together.
 */
@NullMarked
package sagbook.estimate;

import org.jspecify.annotations.NullMarked;
