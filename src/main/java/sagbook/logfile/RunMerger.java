package sagbook.logfile;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;

/**
 * Merges runs of any number of files into one stream whose times rise. Rows closer than half a
 * millisecond are one row: what the first leaves open is filled from the others.
 */
final class RunMerger implements RowStream {
  private static final double SAME_S = 0.0005;

  private final PriorityQueue<Entry> queue =
      new PriorityQueue<>(
          Comparator.comparingDouble((Entry e) -> e.reader.row().timeS)
              .thenComparingInt(e -> e.order));
  private long duplicates;
  private double lastS = Double.NEGATIVE_INFINITY;

  private record Entry(RunReader reader, int order) {}

  RunMerger(List<FileSurvey> surveys, Slots slots) {
    int order = 0;
    for (FileSurvey survey : surveys) {
      for (Run run : survey.runs()) {
        queue.add(new Entry(new RunReader(survey, run, slots), order++));
      }
    }
  }

  /** Rows that were merged into another row of the same time. */
  long duplicates() {
    return duplicates;
  }

  @Override
  public boolean next(Row row) throws InputProblem {
    while (true) {
      Entry first = nextOpen();
      if (first == null) {
        return false;
      }
      row.copyFrom(first.reader.row());
      putBack(first);
      mergeSame(row);
      if (row.timeS > lastS) {
        lastS = row.timeS;
        return true;
      }
      duplicates++;
    }
  }

  private void mergeSame(Row row) throws InputProblem {
    while (true) {
      Entry next = nextOpen();
      if (next == null) {
        return;
      }
      Row other = next.reader.row();
      if (other.timeS > row.timeS + SAME_S) {
        queue.add(next);
        return;
      }
      duplicates += row.fillFrom(other) ? 0 : 1;
      putBack(next);
    }
  }

  /** Takes the entry with the earliest row out of the queue. */
  private @Nullable Entry nextOpen() throws InputProblem {
    while (true) {
      Entry entry = queue.poll();
      if (entry == null || entry.reader.isOpen()) {
        return entry;
      }
      putBack(entry);
    }
  }

  private void putBack(Entry entry) throws InputProblem {
    if (entry.reader.advance()) {
      queue.add(entry);
    } else {
      closeQuietly(entry.reader);
    }
  }

  private static void closeQuietly(RunReader reader) throws InputProblem {
    try {
      reader.close();
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.log.close");
    }
  }

  @Override
  public void close() throws IOException {
    for (Entry entry : queue) {
      entry.reader.close();
    }
  }
}
