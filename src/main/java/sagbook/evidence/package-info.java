/**
 * What a month's log boils down to, gathered in one pass and small enough to keep: a thinned record
 * (one row a minute), current steps with the voltages that answered, and the stress the cells saw.
 * Estimators see this and nothing else.
 *
 * <p>In: blocks of samples ({@link sagbook.model.SampleSink}). Out: {@link
 * sagbook.evidence.Evidence}.
 */
@NullMarked
package sagbook.evidence;

import org.jspecify.annotations.NullMarked;
