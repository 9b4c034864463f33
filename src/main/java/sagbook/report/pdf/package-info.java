/** Pages as PDF, the same bytes on every machine. */
@NullMarked
package sagbook.report.pdf;

import org.jspecify.annotations.NullMarked;
