package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.issue.InputProblem;

/** Compares the clocks of a bank's loggers by the steps that their logs have in common. */
final class ClockComparison {
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
      return "The clock of "
          + file
          + " could not be compared with that of the cell voltages (too few common steps); it is"
          + " used as it is.";
    }
    ClockOffset offset = found.get();
    double perDay = offset.driftPerS() * 86_400;
    String drift =
        Math.abs(perDay) < 0.05
            ? ""
            : String.format(Locale.ROOT, ", drifting by %.1f s a day", perDay);
    String size =
        Math.abs(offset.offsetS()) < LEAST_OFFSET_S && drift.isEmpty()
            ? "agrees with that of the cell voltages"
            : String.format(
                Locale.ROOT,
                "is %.1f s %s that of the cell voltages%s; corrected",
                Math.abs(offset.offsetS()),
                offset.offsetS() > 0 ? "behind" : "ahead of",
                drift);
    return String.format(
        Locale.ROOT,
        "The clock of %s %s (from %d common steps, ± %.1f s).",
        file,
        size,
        offset.pairs(),
        offset.halfWidthS());
  }
}
