package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Compares the clocks of a bank's loggers by the steps that their logs have in common. */
final class ClockComparison {
  private static final Words WORDS = Words.english();
  private static final double LEAST_OFFSET_S = 0.5;

  private ClockComparison() {}

  /** What to add to each group's clock; the first group's rules. */
  static List<Optional<ClockOffset>> of(List<FileGroup> groups) {
    FileGroup leading = groups.get(0);
    List<Optional<ClockOffset>> offsets = new ArrayList<>();
    offsets.add(Optional.empty());
    for (FileGroup group : groups.subList(1, groups.size())) {
      boolean current = group.largest().hasCurrent();
      offsets.add(
          ClockOffset.between(
              leading.voltageEdges(),
              current ? group.currentEdges() : group.voltageEdges(),
              Math.max(leading.cadenceS(), group.cadenceS())));
    }
    return offsets;
  }

  static List<String> sentences(List<FileGroup> groups, List<Optional<ClockOffset>> offsets) {
    List<String> sentences = new ArrayList<>();
    for (int i = 1; i < groups.size(); i++) {
      String file = InputProblem.quoted(groups.get(i).files().get(0).plan().source().name());
      sentences.add(sentence(file, offsets.get(i)));
    }
    return sentences;
  }

  private static String sentence(String file, Optional<ClockOffset> found) {
    if (found.isEmpty()) {
      return WORDS.say("reading.clocks.unknown", file);
    }
    ClockOffset offset = found.get();
    double perDayS = offset.driftPerS() * 86_400;
    boolean drifts = Math.abs(perDayS) >= 0.05;
    String seen = Integer.toString(offset.pairs());
    String sure = Words.fixed(offset.halfWidthS(), 1);
    if (Math.abs(offset.offsetS()) < LEAST_OFFSET_S && !drifts) {
      return WORDS.say("reading.clocks.agree", file, seen, sure);
    }
    String size = Words.fixed(Math.abs(offset.offsetS()), 1);
    String key = offset.offsetS() > 0 ? "reading.clocks.behind" : "reading.clocks.ahead";
    return drifts
        ? WORDS.say(key + ".drifts", file, seen, sure, size, Words.fixed(perDayS, 1))
        : WORDS.say(key, file, seen, sure, size);
  }
}
