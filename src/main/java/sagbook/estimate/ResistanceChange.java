package sagbook.estimate;

import sagbook.model.Estimate;

/**
 * A cell's resistance became another one within the log.
 *
 * @param sinceS start of the first day on which it was another one, s since 1970
 * @param beforeRelative resistance over the string's median before that day
 */
public record ResistanceChange(double sinceS, Estimate beforeRelative) {}
