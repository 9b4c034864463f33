@NullMarked
package sagbook.packfile;

import org.jspecify.annotations.NullMarked;
