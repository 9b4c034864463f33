/**
 * Bench tests of single cells: capacity and direct-current resistance by the definitions of IEC
 * 61960-3 and IEC 62620, and which spare fits which place. Pure arithmetic.
 */
@NullMarked
package sagbook.bench;

import org.jspecify.annotations.NullMarked;
