/**
 * How the string as a whole answers a step of its drive: the shape of the response that the
 * resistance and the charge estimators build on.
 */
@NullMarked
package sagbook.estimate.response;

import org.jspecify.annotations.NullMarked;
