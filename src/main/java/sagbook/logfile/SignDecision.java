package sagbook.logfile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.model.CurrentSign;

/**
 * The sign of the current and how it was settled.
 *
 * @param sign to read the current with
 * @param sentence for the keeper
 */
record SignDecision(CurrentSign sign, String sentence) {
  static SignDecision of(
      Optional<CurrentSign> told, List<FileSurvey> files, List<Optional<ClockOffset>> offsets) {
    SignVote vote = new SignVote();
    for (FileSurvey file : files) {
      vote.addAll(file.sign());
    }
    Optional<ClockOffset> aligned = offsets.stream().flatMap(Optional::stream).findFirst();
    boolean settled = vote.isSettled() || aligned.isPresent();
    boolean negative =
        vote.isSettled() ? vote.correlation() < 0 : aligned.isPresent() && aligned.get().sign() < 0;
    CurrentSign seen = negative ? CurrentSign.DISCHARGE_POSITIVE : CurrentSign.CHARGE_POSITIVE;
    String strength =
        vote.isSettled()
            ? String.format(
                Locale.ROOT, "correlation of their steps %.2f", Math.abs(vote.correlation()))
            : aligned.map(a -> a.pairs() + " steps common to both logs").orElse("");
    if (told.isPresent()) {
      String said = "Current: " + told.get().words() + ", as the pack description says";
      boolean contradicts = settled && seen != told.get();
      return new SignDecision(
          told.get(),
          contradicts
              ? said
                  + ", but the cells' voltage answers as if it were "
                  + seen.words()
                  + " ("
                  + strength
                  + "); check current_sign."
              : said + ".");
    }
    if (settled) {
      return new SignDecision(
          seen,
          "Current: "
              + seen.words()
              + ", found from how the cells' voltage answers it ("
              + strength
              + ").");
    }
    return new SignDecision(
        CurrentSign.CHARGE_POSITIVE,
        "Current: its sign could not be found from the voltage, so charge positive is assumed;"
            + " set current_sign in the pack description.");
  }
}
