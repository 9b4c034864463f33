/**
 * The record that lasts: one SQLite file with every month of a battery and its diary. A change is
 * there as a whole or not at all, whatever ends the program; several runs may share a file.
 */
@NullMarked
package sagbook.record.store;

import org.jspecify.annotations.NullMarked;
