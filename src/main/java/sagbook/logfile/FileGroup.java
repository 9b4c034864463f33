package sagbook.logfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sagbook.align.EdgeCollector;
import sagbook.align.EdgeTrain;

/**
 * Files of one logger: they hold the same channels and follow each other or overlap.
 *
 * @param files one at least
 */
record FileGroup(List<FileSurvey> files) {
  FileGroup {
    files = List.copyOf(files);
  }

  /** Groups files by the channels they share; the group with most cell voltages comes first. */
  static List<FileGroup> of(List<FileSurvey> files) {
    List<List<FileSurvey>> groups = new ArrayList<>();
    for (FileSurvey file : files) {
      List<FileSurvey> joined = new ArrayList<>(List.of(file));
      for (List<FileSurvey> group : List.copyOf(groups)) {
        if (group.stream().anyMatch(other -> shareChannels(file, other))) {
          groups.remove(group);
          joined.addAll(group);
        }
      }
      groups.add(joined);
    }
    List<FileGroup> found = new ArrayList<>();
    for (List<FileSurvey> group : groups) {
      group.sort(Comparator.comparingInt(files::indexOf));
      found.add(new FileGroup(group));
    }
    found.sort(
        Comparator.comparingInt((FileGroup g) -> -g.cells())
            .thenComparingLong(g -> -g.rows())
            .thenComparingInt(g -> files.indexOf(g.files.get(0))));
    return found;
  }

  private static boolean shareChannels(FileSurvey one, FileSurvey other) {
    if (one.hasVoltage() != other.hasVoltage()) {
      return false;
    }
    int cells = Math.min(one.slots().cells(), other.slots().cells());
    if (!one.hasVoltage() && one.hasCurrent() && other.hasCurrent()) {
      return true;
    }
    for (int cell = 1; cell <= cells; cell++) {
      int mine = one.hasVoltage() ? one.slots().voltage(cell) : one.slots().temperature(cell);
      int theirs = one.hasVoltage() ? other.slots().voltage(cell) : other.slots().temperature(cell);
      if (one.validCounts()[mine] > 0 && other.validCounts()[theirs] > 0) {
        return true;
      }
    }
    return false;
  }

  private int cells() {
    int cells = 0;
    for (FileSurvey file : files) {
      int own = 0;
      for (int cell = 1; cell <= file.slots().cells(); cell++) {
        own += file.validCounts()[file.slots().voltage(cell)] > 0 ? 1 : 0;
      }
      cells = Math.max(cells, own);
    }
    return cells;
  }

  long rows() {
    return files.stream().mapToLong(FileSurvey::rows).sum();
  }

  /** The file with most rows speaks for the group. */
  FileSurvey largest() {
    return files.stream().max(Comparator.comparingLong(FileSurvey::rows)).orElseThrow();
  }

  boolean isPartial() {
    return largest().rhythm().isPartial();
  }

  boolean isChangeOnly() {
    return largest().rhythm().isChangeOnly();
  }

  /** Usual time between whole rows, s. */
  double cadenceS() {
    FileSurvey largest = largest();
    return largest.rhythm().isPartial() ? largest.rhythm().usualIntervalS() : largest.cadenceS();
  }

  EdgeTrain voltageEdges() {
    List<EdgeCollector> collectors = files.stream().map(FileSurvey::voltageEdges).toList();
    return EdgeCollector.train(collectors);
  }

  EdgeTrain currentEdges() {
    List<EdgeCollector> collectors = files.stream().map(FileSurvey::currentEdges).toList();
    return EdgeCollector.train(collectors);
  }

  /** The same group with only the files that {@code wanted} holds. */
  FileGroup only(List<FileSurvey> wanted) {
    return new FileGroup(files.stream().filter(wanted::contains).toList());
  }
}
