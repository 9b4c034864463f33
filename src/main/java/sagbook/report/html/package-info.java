/**
 * report.html: one page that opens offline, made from templates that escape by context. What it
 * says is put together in {@link sagbook.report.html.ReportPage}; the templates only lay it out.
 */
@NullMarked
package sagbook.report.html;

import org.jspecify.annotations.NullMarked;
