package sagbook.issue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sagbook.wording.Words;

/**
 * Counts what was wrong with the data by reason and keeps the first place of each, so that memory
 * stays small however bad a log is.
 */
public final class IssueStore {
  private static final Words WORDS = Words.english();

  private final Map<RowIssue, Entry> entries = new EnumMap<>(RowIssue.class);

  private static final class Entry {
    long count;
    final String firstPlace;

    Entry(String firstPlace) {
      this.firstPlace = firstPlace;
    }
  }

  /** Counts one issue; {@code file} and {@code line} are kept for the first of its kind. */
  public void add(RowIssue issue, String file, long line) {
    Entry entry = entries.get(issue);
    if (entry == null) {
      entry = new Entry(WORDS.say("place.line", InputProblem.quoted(file), Long.toString(line)));
      entries.put(issue, entry);
    }
    entry.count++;
  }

  /** Counts several issues of a kind in a file. */
  public void add(RowIssue issue, long count, String file) {
    entries.computeIfAbsent(issue, i -> new Entry(InputProblem.quoted(file))).count += count;
  }

  /** Adds the counts of another store. */
  public void addAll(IssueStore other) {
    other.entries.forEach(
        (issue, theirs) -> {
          Entry ours = entries.computeIfAbsent(issue, i -> new Entry(theirs.firstPlace));
          ours.count += theirs.count;
        });
  }

  /** File and line of the first issue of one of these kinds; empty when there is none. */
  public String firstPlace(RowIssue... issues) {
    for (RowIssue issue : issues) {
      Entry entry = entries.get(issue);
      if (entry != null) {
        return entry.firstPlace;
      }
    }
    return "";
  }

  public long count(RowIssue issue) {
    Entry entry = entries.get(issue);
    return entry == null ? 0 : entry.count;
  }

  /** One plain phrase a reason, in the order of {@link RowIssue}. */
  public List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    entries.forEach(
        (issue, entry) ->
            sentences.add(
                WORDS.say(
                    "reading.left-out",
                    Words.whole(entry.count),
                    issue.words(),
                    entry.firstPlace)));
    return sentences;
  }
}
