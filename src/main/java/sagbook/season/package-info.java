/**
 * What the months of a record show together: trends, who drifts, changes and what they did. From
 * kept months and the diary to one result; reads and writes nothing.
 */
@NullMarked
package sagbook.season;

import org.jspecify.annotations.NullMarked;
