/**
 * Logs in: finds the files, works out what each column means, and hands on blocks of samples in the
 * project's units. The only package that knows what a log file looks like.
 */
@NullMarked
package sagbook.logfile;

import org.jspecify.annotations.NullMarked;
