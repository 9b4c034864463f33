package sagbook.logfile;

import java.time.Instant;
import java.util.List;
import sagbook.align.EdgeCollector;
import sagbook.issue.IssueStore;

/**
 * What one pass over a whole file showed.
 *
 * @param plan how to read it, with units settled from all its values
 * @param sha256 of its bytes as they lie on disk
 * @param rows rows with a readable time
 * @param runs stretches over which time does not run backwards
 * @param cadenceS median time between rows, s; NaN with fewer than two rows
 * @param slots of the counts
 * @param validCounts values by slot
 * @param highestCell highest cell number with a voltage
 * @param sign evidence of the sign of the current
 * @param missedChanges how often its local clock was seen not to follow summer time
 * @param rhythm how its cell voltages come in
 * @param voltageEdges its largest steps of voltage
 * @param currentEdges its largest steps of current
 * @param issues what was left out
 */
record FileSurvey(
    FilePlan plan,
    String sha256,
    long rows,
    List<Run> runs,
    double cadenceS,
    Slots slots,
    long[] validCounts,
    int highestCell,
    SignVote sign,
    int missedChanges,
    ChannelRhythm rhythm,
    EdgeCollector voltageEdges,
    EdgeCollector currentEdges,
    IssueStore issues) {
  FileSurvey {
    runs = List.copyOf(runs);
  }

  /** The file as results name it. */
  ReadReport.Input input() {
    return new ReadReport.Input(
        plan.source().name(),
        sha256,
        rows,
        Instant.ofEpochMilli(Math.round(firstS() * 1000)),
        Instant.ofEpochMilli(Math.round(lastS() * 1000)));
  }

  double firstS() {
    return runs.stream().mapToDouble(Run::firstS).min().orElse(Double.NaN);
  }

  double lastS() {
    return runs.stream().mapToDouble(Run::lastS).max().orElse(Double.NaN);
  }

  /** Highest cell number for which there are voltages. */
  int highestMeasuredCell() {
    for (int cell = slots.cells(); cell > 0; cell--) {
      if (validCounts[slots.voltage(cell)] > 0) {
        return cell;
      }
    }
    return 0;
  }

  boolean hasVoltage() {
    return highestMeasuredCell() > 0;
  }

  boolean hasTemperature(int sensor) {
    return sensor <= slots.cells() && validCounts[slots.temperature(sensor)] > 0;
  }

  boolean hasAnyTemperature() {
    for (int sensor = 1; sensor <= slots.cells(); sensor++) {
      if (hasTemperature(sensor)) {
        return true;
      }
    }
    return false;
  }

  boolean hasCurrent() {
    return validCounts[slots.current()] > 0 || validCounts[slots.power()] > 0;
  }

  boolean hasBleed() {
    for (int cell = 1; cell <= slots.cells(); cell++) {
      if (validCounts[slots.bleed(cell)] > 0) {
        return true;
      }
    }
    return false;
  }
}
