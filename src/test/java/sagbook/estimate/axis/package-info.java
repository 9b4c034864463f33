@NullMarked
package sagbook.estimate.axis;

import org.jspecify.annotations.NullMarked;
