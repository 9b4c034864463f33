/**
 * Invented batteries with known truth: cells from published half-cell functions, boards that read
 * and bleed them, a household that charges and empties them, and faults with a date. Made to test
 * the chain and to show it to people; no stage of the chain uses it, and its physics is not the
 * estimators'.
 *
 * <p>In: a {@link sagbook.simulate.Scenario}. Out: rows of a log and, month by month, the truth
 * behind them. The same scenario and seed give the same numbers on every machine: arithmetic is
 * strict (Java 17), transcendental functions come from {@link StrictMath}, and random numbers from
 * {@link java.util.SplittableRandom}, which is the SplitMix64 generator of Steele, Lea and Flood
 * (OOPSLA 2014).
 */
@NullMarked
package sagbook.simulate;

import org.jspecify.annotations.NullMarked;
