/**
 * What the battery went through and what balancing did, added up from the thinned record: the kind
 * of account that goes with a battery when it changes hands. Minute means are fine enough for it;
 * what must be counted at the full rate stands in {@link sagbook.evidence.Stress}.
 */
@NullMarked
package sagbook.account;

import org.jspecify.annotations.NullMarked;
