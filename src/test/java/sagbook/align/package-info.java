@NullMarked
package sagbook.align;

import org.jspecify.annotations.NullMarked;
