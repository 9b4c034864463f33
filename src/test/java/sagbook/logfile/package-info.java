@NullMarked
package sagbook.logfile;

import org.jspecify.annotations.NullMarked;
