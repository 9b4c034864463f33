package sagbook.logfile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sagbook.model.CurrentSign;

/**
 * The sign of the current and how it was settled.
 *
 * @param sign to read the current with
 * @param sentence for the keeper
 */
record SignDecision(CurrentSign sign, String sentence) {
  static SignDecision of(Optional<CurrentSign> told, List<FileSurvey> files) {
    SignVote vote = new SignVote();
    for (FileSurvey file : files) {
      vote.addAll(file.sign());
    }
    CurrentSign seen =
        vote.correlation() < 0 ? CurrentSign.DISCHARGE_POSITIVE : CurrentSign.CHARGE_POSITIVE;
    String strength = String.format(Locale.ROOT, "%.2f", Math.abs(vote.correlation()));
    if (told.isPresent()) {
      String told1 = "Current: " + told.get().words() + ", as the pack description says";
      boolean contradicts = vote.isSettled() && seen != told.get();
      return new SignDecision(
          told.get(),
          contradicts
              ? told1
                  + ", but the cells' voltage answers as if it were "
                  + seen.words()
                  + " (correlation "
                  + strength
                  + "); check current_sign."
              : told1 + ".");
    }
    if (vote.isSettled()) {
      return new SignDecision(
          seen,
          "Current: "
              + seen.words()
              + ", found from how the cells' voltage answers it (correlation of their steps "
              + strength
              + ").");
    }
    return new SignDecision(
        CurrentSign.CHARGE_POSITIVE,
        "Current: its sign could not be found from the voltage, so charge positive is assumed;"
            + " set current_sign in the pack description.");
  }
}
