/** Published open-circuit functions: the outside knowledge that the charge estimators lean on. */
@NullMarked
package sagbook.estimate.curve;

import org.jspecify.annotations.NullMarked;
