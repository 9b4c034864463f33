package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.model.Channels;

/** Decides what only all files of a bank together can tell. */
final class BankJoiner {
  private final ReadRequest request;
  private final String name;
  private final List<FileSurvey> files;
  private final List<String> passedOver;

  BankJoiner(ReadRequest request, String name, List<FileSurvey> files, List<String> passedOver) {
    this.request = request;
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
    Channels channels = new Channels(cells, sensors.isPresent(), hasCurrent, hasBleed);
    SignDecision sign = SignDecision.of(request.pack().currentSign(), files);
    List<String> notes = new ArrayList<>(BankNotes.of(files));
    if (!sensors.sentence().isEmpty()) {
      notes.add(sensors.sentence());
    }
    notes.add(hasCurrent ? sign.sentence() : "Current: not logged.");
    notes.addAll(passedOver);
    return new BankLogs(
        name, files, channels, sensors.sensorOf(), sign, request.from(), request.to(), notes);
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
      throw InputProblem.input(LogFolder.noCells(widest));
    }
    int named = Math.max(highest, Math.min(cells, highestNamed()));
    if (named != cells) {
      throw InputProblem.usage(
          "The pack description says series_cells = "
              + cells
              + ", but the log "
              + InputProblem.quoted(widest.plan().source().name())
              + " has voltages of "
              + named
              + " cells; correct series_cells, or name the log of this battery.");
    }
  }

  private int highestNamed() {
    return files.stream().mapToInt(FileSurvey::highestCell).max().orElse(0);
  }
}
