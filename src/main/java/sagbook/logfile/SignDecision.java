package sagbook.logfile;

import java.util.List;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.model.CurrentSign;
import sagbook.wording.Words;

/**
 * The sign of the current and how it was settled.
 *
 * @param sign to read the current with
 * @param sentence for the keeper
 */
record SignDecision(CurrentSign sign, String sentence) {
  private static final Words WORDS = Words.english();

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
            ? WORDS.say("reading.sign.correlation", Words.fixed(Math.abs(vote.correlation()), 2))
            : aligned
                .map(a -> WORDS.say("reading.sign.steps", Integer.toString(a.pairs())))
                .orElse("");
    if (told.isPresent()) {
      return new SignDecision(
          told.get(),
          settled && seen != told.get()
              ? WORDS.say("reading.sign.contradicts", spoken(told.get()), spoken(seen), strength)
              : WORDS.say("reading.sign.told", spoken(told.get())));
    }
    if (settled) {
      return new SignDecision(seen, WORDS.say("reading.sign.found", spoken(seen), strength));
    }
    return new SignDecision(
        CurrentSign.CHARGE_POSITIVE,
        WORDS.say("reading.sign.assumed", spoken(CurrentSign.CHARGE_POSITIVE)));
  }

  private static String spoken(CurrentSign sign) {
    return WORDS.say("reading.current." + sign.words().replace(' ', '-'));
  }
}
