package sagbook.logfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.issue.InputProblem;
import sagbook.model.Channels;
import sagbook.model.LogMapping;
import sagbook.wording.Words;

/** Decides what only all files of a bank together can tell. */
final class BankJoiner {
  private static final Words WORDS = Words.english();

  /** An hour: a cell at rest may keep its millivolt that long; a dead logger is found sooner. */
  private static final double DEFAULT_HOLD_S = 3600;

  private final ReadRequest request;
  private final List<LogMapping> mappings;
  private final String name;
  private final List<FileSurvey> files;
  private final List<String> passedOver;

  BankJoiner(
      ReadRequest request,
      List<LogMapping> mappings,
      String name,
      List<FileSurvey> files,
      List<String> passedOver) {
    this.request = request;
    this.mappings = mappings;
    this.name = name;
    this.files = files;
    this.passedOver = passedOver;
  }

  BankLogs join() throws InputProblem {
    int cells = request.pack().seriesCells();
    checkCells(cells);
    Sensors sensors = Sensors.of(files, cells);
    boolean hasCurrent = files.stream().anyMatch(FileSurvey::hasCurrent);
    boolean hasBleed = files.stream().anyMatch(FileSurvey::hasBleed);
    List<FileGroup> groups = FileGroup.of(files);
    for (FileGroup group : groups) {
      refusePiledUp(group);
    }
    List<Optional<ClockOffset>> offsets = ClockComparison.of(groups);
    Channels channels = new Channels(cells, sensors.isPresent(), hasCurrent, hasBleed);
    SignDecision sign = SignDecision.of(request.pack().currentSign(), files, offsets);
    List<String> notes = new ArrayList<>(BankNotes.of(files));
    if (!sensors.sentence().isEmpty()) {
      notes.add(sensors.sentence());
    }
    notes.add(hasCurrent ? sign.sentence() : WORDS.say("reading.current.none"));
    notes.addAll(ClockComparison.sentences(groups, offsets));
    double holdS = holdS();
    notes.addAll(gathering(groups, holdS));
    notes.addAll(passedOver);
    return new BankLogs(
        name,
        files,
        groups,
        offsets,
        holdS,
        channels,
        sensors.sensorOf(),
        sign,
        request.from(),
        request.to(),
        request.pack().timezone(),
        notes);
  }

  /** Files that count from the same start lie on top of each other: their times can't all hold. */
  private static void refusePiledUp(FileGroup group) throws InputProblem {
    List<FileSurvey> elapsed =
        group.files().stream()
            .filter(file -> file.plan().clock().kind() == ClockPlan.Kind.ELAPSED)
            .sorted(Comparator.comparingDouble(FileSurvey::firstS))
            .toList();
    for (int i = 1; i < elapsed.size(); i++) {
      FileSurvey one = elapsed.get(i - 1);
      FileSurvey other = elapsed.get(i);
      if (other.firstS() < one.lastS() && !one.sha256().equals(other.sha256())) {
        throw InputProblem.input(
            "problem.log.overlap",
            InputProblem.quoted(one.plan().source().name()),
            InputProblem.quoted(other.plan().source().name()));
      }
    }
  }

  private double holdS() {
    return mappings.stream().flatMap(m -> m.holdS().stream()).findFirst().orElse(DEFAULT_HOLD_S);
  }

  private static List<String> gathering(List<FileGroup> groups, double holdS) {
    List<String> notes = new ArrayList<>();
    for (FileGroup group : groups) {
      if (group.isChangeOnly()) {
        notes.add(WORDS.say("reading.rows.changes", WORDS.span(holdS)));
      } else if (group.isPartial()) {
        notes.add(WORDS.say("reading.rows.rounds"));
      }
    }
    return notes;
  }

  private void checkCells(int cells) throws InputProblem {
    int highest = 0;
    FileSurvey widest = files.get(0);
    for (FileSurvey file : files) {
      if (file.highestMeasuredCell() > highest) {
        highest = file.highestMeasuredCell();
        widest = file;
      }
    }
    if (highest == 0) {
      throw LogFolder.noCells(widest);
    }
    int named = Math.max(highest, Math.min(cells, highestNamed()));
    if (named != cells) {
      throw InputProblem.usage(
          "problem.log.cells",
          Integer.toString(cells),
          InputProblem.quoted(widest.plan().source().name()),
          Integer.toString(named));
    }
  }

  private int highestNamed() {
    return files.stream().mapToInt(FileSurvey::highestCell).max().orElse(0);
  }
}
