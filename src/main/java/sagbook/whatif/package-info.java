/**
 * What the string gives now and what it would give after rebalancing, after replacing cells and
 * after mending a joint, with intervals; what each cell costs. From estimates and from how the
 * household uses the battery; pure arithmetic (see {@link sagbook.estimate.UsableCharge}).
 */
@NullMarked
package sagbook.whatif;

import org.jspecify.annotations.NullMarked;
