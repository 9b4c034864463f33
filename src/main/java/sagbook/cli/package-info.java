/** The command line: the only place that prints, and the only one that ends the program. */
@NullMarked
package sagbook.cli;

import org.jspecify.annotations.NullMarked;
