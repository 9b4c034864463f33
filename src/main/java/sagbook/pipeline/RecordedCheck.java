package sagbook.pipeline;

import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import sagbook.issue.InputProblem;
import sagbook.logfile.LogFolder;
import sagbook.logfile.OpenedLogs;
import sagbook.logfile.ReadReport;
import sagbook.logfile.ReadRequest;
import sagbook.record.CheckResult;
import sagbook.record.KnownFiles;
import sagbook.wording.Words;

/**
 * Checks of what a record doesn't know yet. Logs of up to a month are one check. Longer ones are
 * checked file by file where each file holds about a month, else calendar month by calendar month;
 * only what new files reach into.
 */
public final class RecordedCheck {
  private static final Words WORDS = Words.english();

  /** Up to this long, logs are taken as one month. */
  private static final Duration A_MONTH = Duration.ofDays(32);

  /** From this length on, a file is taken to hold a month. */
  private static final Duration MOST_OF_A_MONTH = Duration.ofDays(20);

  private static final Duration A_DAY = Duration.ofDays(1);

  private final ReadRequest request;
  private final ZoneId zone;
  private final KnownFiles known;
  private final Map<String, String> hashes;

  private RecordedCheck(ReadRequest request, KnownFiles known, Map<String, String> hashes) {
    this.request = request;
    this.zone = request.pack().timezone();
    this.known = known;
    this.hashes = hashes;
  }

  /**
   * A month to check.
   *
   * @param month its calendar month, or that of its middle
   * @param request what to read for it
   */
  private record Part(YearMonth month, ReadRequest request) {}

  /** Time that a file covers. */
  private record Span(String file, Instant first, Instant last) {
    Duration length() {
      return Duration.between(first, last);
    }

    Instant middle() {
      return first.plus(length().dividedBy(2));
    }

    boolean holdsMiddleOf(Span other) {
      return !other.middle().isBefore(first) && !other.middle().isAfter(last);
    }
  }

  /** Takes each month's result as soon as it is there. */
  @FunctionalInterface
  public interface Taken {
    /**
     * A month's result.
     *
     * @param month its calendar month, or that of its middle
     * @param alone whether it is the only one of this run
     */
    void month(YearMonth month, CheckResult result, boolean alone) throws InputProblem;
  }

  /**
   * What was done.
   *
   * @param checked months that were checked
   * @param files files that were named
   * @param known files of these that the record knew and that were not read
   * @param leftOut why a month was left out, plain sentences
   */
  public record Outcome(List<YearMonth> checked, int files, int known, List<String> leftOut) {
    public Outcome {
      checked = List.copyOf(checked);
      leftOut = List.copyOf(leftOut);
    }
  }

  /**
   * Runs the checks, oldest month first.
   *
   * @param known what the record knows
   * @param softwareVersion goes into the results
   * @param progress told in a few words what is being done
   */
  public static Outcome run(
      ReadRequest request,
      KnownFiles known,
      String softwareVersion,
      Consumer<String> progress,
      Taken taken)
      throws InputProblem {
    progress.accept(WORDS.say("progress.new"));
    RecordedCheck check = new RecordedCheck(request, known, LogFolder.hashes(request));
    List<Part> parts = check.parts();
    List<YearMonth> checked = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    Optional<InputProblem> first = Optional.empty();
    for (Part part : parts) {
      CheckResult result;
      try {
        result =
            Check.run(
                part.request(),
                softwareVersion,
                words ->
                    progress.accept(WORDS.say("progress.month", part.month().toString(), words)));
      } catch (InputProblem problem) {
        if (problem.kind() != InputProblem.Kind.INPUT) {
          throw problem;
        }
        first = Optional.of(first.orElse(problem));
        leftOut.add(WORDS.say("kept.left-out", part.month().toString(), problem.sentence()));
        continue;
      }
      taken.month(part.month(), result, parts.size() == 1);
      checked.add(part.month());
    }
    if (checked.isEmpty() && first.isPresent()) {
      throw first.get();
    }
    Set<String> read = new HashSet<>();
    parts.forEach(part -> read.addAll(check.readFor(part)));
    return new Outcome(checked, check.hashes.size(), check.hashes.size() - read.size(), leftOut);
  }

  private Set<String> readFor(Part part) {
    Set<String> read = new HashSet<>(hashes.keySet());
    read.removeAll(part.request().leftOut());
    return read;
  }

  private List<Part> parts() throws InputProblem {
    List<Span> old = new ArrayList<>();
    Set<String> complete = new HashSet<>();
    hashes.forEach(
        (file, hash) ->
            known
                .find(hash, zone)
                .ifPresent(
                    input -> {
                      old.add(new Span(file, input.first(), input.last()));
                      complete.add(file);
                    }));
    List<Span> fresh = complete.size() == hashes.size() ? List.of() : fresh(complete);
    if (fresh.isEmpty()) {
      return List.of();
    }
    List<Span> all = new ArrayList<>(old);
    all.addAll(fresh);
    Instant first = all.stream().map(Span::first).min(Instant::compareTo).orElseThrow();
    Instant last = all.stream().map(Span::last).max(Instant::compareTo).orElseThrow();
    Span whole = new Span("", first, last);
    if (whole.length().compareTo(A_MONTH) <= 0) {
      return List.of(new Part(month(whole), request));
    }
    if (all.stream().allMatch(RecordedCheck::isAMonth)) {
      return byFile(all, fresh);
    }
    List<Part> parts = new ArrayList<>();
    for (YearMonth month : months(fresh)) {
      parts.add(part(month, all));
    }
    return parts;
  }

  private static boolean isAMonth(Span file) {
    return file.length().compareTo(MOST_OF_A_MONTH) >= 0 && file.length().compareTo(A_MONTH) <= 0;
  }

  private YearMonth month(Span span) {
    return YearMonth.from(span.middle().atZone(zone));
  }

  /** One part a month's files, of those months that have a new one. */
  private List<Part> byFile(List<Span> all, List<Span> fresh) {
    List<Span> waiting = new ArrayList<>(all);
    waiting.sort(Comparator.comparing(Span::first).thenComparing(Span::file));
    List<Part> parts = new ArrayList<>();
    while (!waiting.isEmpty()) {
      Span first = waiting.get(0);
      List<Span> together = waiting.stream().filter(first::holdsMiddleOf).toList();
      waiting.removeAll(together);
      if (together.stream().anyMatch(fresh::contains)) {
        Set<String> others = new HashSet<>();
        all.forEach(span -> others.add(span.file()));
        together.forEach(span -> others.remove(span.file()));
        parts.add(new Part(month(first), request.without(others)));
      }
    }
    return parts;
  }

  /** Files that the record doesn't know; where they can't be understood alone, all are opened. */
  private List<Span> fresh(Set<String> complete) throws InputProblem {
    OpenedLogs logs;
    try {
      logs = LogFolder.open(request.without(complete));
    } catch (InputProblem notAlone) {
      if (complete.isEmpty()) {
        throw notAlone;
      }
      logs = LogFolder.open(request);
    }
    List<Span> spans = new ArrayList<>();
    for (String bank : logs.banks()) {
      for (ReadReport.Input input : logs.files(bank)) {
        if (!complete.contains(input.file())) {
          spans.add(new Span(input.file(), input.first(), input.last()));
        }
      }
    }
    return spans;
  }

  /** Calendar months of which the files hold a day or more. */
  private Collection<YearMonth> months(List<Span> files) {
    Set<YearMonth> months = new TreeSet<>();
    for (Span file : files) {
      YearMonth month = YearMonth.from(file.first().atZone(zone));
      while (!start(month).isAfter(file.last())) {
        months.add(month);
        month = month.plusMonths(1);
      }
    }
    months.removeIf(month -> within(month, files).compareTo(A_DAY) < 0);
    return months;
  }

  private Duration within(YearMonth month, List<Span> files) {
    Instant first = Instant.MAX;
    Instant last = Instant.MIN;
    for (Span file : files) {
      if (reaches(file, month)) {
        first = file.first().isBefore(first) ? file.first() : first;
        last = file.last().isAfter(last) ? file.last() : last;
      }
    }
    first = first.isBefore(start(month)) ? start(month) : first;
    last = last.isAfter(start(month.plusMonths(1))) ? start(month.plusMonths(1)) : last;
    return first.isBefore(last) ? Duration.between(first, last) : Duration.ZERO;
  }

  private boolean reaches(Span file, YearMonth month) {
    return file.first().isBefore(start(month.plusMonths(1))) && !file.last().isBefore(start(month));
  }

  private Part part(YearMonth month, List<Span> files) {
    Set<String> others = new HashSet<>();
    for (Span file : files) {
      if (!reaches(file, month)) {
        others.add(file.file());
      }
    }
    return new Part(
        month, request.without(others).between(start(month), start(month.plusMonths(1))));
  }

  private Instant start(YearMonth month) {
    return month.atDay(1).atStartOfDay(zone).toInstant();
  }
}
