/**
 * The keeper's own words in: the pack description (pack.toml) and the column mapping, both TOML.
 * Whatever is wrong in them is said in one sentence with file, line and column.
 */
@NullMarked
package sagbook.packfile;

import org.jspecify.annotations.NullMarked;
