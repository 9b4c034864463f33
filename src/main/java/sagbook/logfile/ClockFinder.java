package sagbook.logfile;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Works out from names and first values how a file tells time. */
final class ClockFinder {
  private static final Words WORDS = Words.english();
  private static final double EARLIEST_UNIX_S = 1e8;

  private final List<String> names;
  private final List<String[]> rows;
  private final NumberReader numbers;
  private final ZoneId packZone;

  ClockFinder(Dialect dialect, List<String[]> rows, ZoneId packZone) {
    this.names = dialect.names();
    this.rows = rows;
    this.numbers = new NumberReader(dialect.decimalComma());
    this.packZone = packZone;
  }

  private enum Look {
    FULL,
    DAY,
    TIME_OF_DAY,
    UNIX,
    SMALL_NUMBER,
    OTHER
  }

  /** The plan, or empty when no column tells time. */
  Optional<ClockPlan> find(List<Integer> timeColumns) {
    List<Integer> candidates = new ArrayList<>(timeColumns);
    if (candidates.isEmpty()) {
      for (int i = 0; i < names.size(); i++) {
        Look look = look(i);
        if (look == Look.FULL || (look == Look.UNIX && rises(i))) {
          candidates.add(i);
        }
      }
    }
    Optional<Integer> main = first(candidates, Look.FULL);
    if (main.isEmpty()) {
      main = first(candidates, Look.UNIX);
    }
    if (main.isPresent()) {
      ClockPlan plan = look(main.get()) == Look.FULL ? written(main.get(), -1) : unix(main.get());
      return Optional.of(withFinerColumn(plan, candidates));
    }
    Optional<Integer> day = first(candidates, Look.DAY);
    Optional<Integer> time = first(candidates, Look.TIME_OF_DAY);
    if (day.isPresent() && time.isPresent()) {
      return Optional.of(written(time.get(), day.get()));
    }
    return first(candidates, Look.SMALL_NUMBER).map(this::elapsed);
  }

  private Optional<Integer> first(List<Integer> candidates, Look look) {
    for (int candidate : candidates) {
      if (look(candidate) == look) {
        return Optional.of(candidate);
      }
    }
    return Optional.empty();
  }

  private Look look(int field) {
    Map<Look, Integer> votes = new EnumMap<>(Look.class);
    int seen = 0;
    for (String[] row : rows) {
      if (field < row.length && !row[field].isEmpty()) {
        votes.merge(look(row[field]), 1, Integer::sum);
        seen++;
      }
    }
    for (Map.Entry<Look, Integer> vote : votes.entrySet()) {
      if (vote.getValue() * 10 >= seen * 8) {
        return vote.getKey();
      }
    }
    return Look.OTHER;
  }

  private Look look(String value) {
    double number = numbers.read(value);
    if (value.matches("(19|20)[0-9]{6}") || Double.isNaN(number)) {
      char[] c = value.toCharArray();
      for (DateOrder order : DateOrder.values()) {
        MomentReader reader = new MomentReader(order);
        if (reader.read(c, 0, c.length)) {
          return !reader.hasDate()
              ? Look.TIME_OF_DAY
              : value.contains(":") || value.length() > 12 ? Look.FULL : Look.DAY;
        }
      }
      return Look.OTHER;
    }
    return Math.abs(number) >= EARLIEST_UNIX_S ? Look.UNIX : Look.SMALL_NUMBER;
  }

  private boolean rises(int field) {
    double last = Double.NEGATIVE_INFINITY;
    for (String[] row : rows) {
      double value = field < row.length ? numbers.read(row[field]) : Double.NaN;
      if (value < last) {
        return false;
      }
      last = value;
    }
    return true;
  }

  private ClockPlan written(int field, int dayField) {
    int dated = dayField >= 0 ? dayField : field;
    DateOrderVote vote = DateOrderVote.of(rows, dated);
    boolean offset = rows.stream().anyMatch(row -> hasOffset(row, field, vote.order()));
    boolean utc =
        names.get(field).toUpperCase(Locale.ROOT).matches(".*(^|[^A-Z])(UTC|GMT)([^A-Z]|$).*");
    ZoneId zone = utc ? ZoneOffset.UTC : packZone;
    String columns =
        dayField >= 0
            ? WORDS.say("reading.columns.two", quoted(dayField), quoted(field))
            : quoted(field);
    String words =
        offset
            ? WORDS.say("clock.offset", columns, vote.words())
            : utc
                ? WORDS.say("clock.utc", columns, vote.words())
                : WORDS.say("clock.local", columns, vote.words(), packZone.getId());
    return new ClockPlan(
        ClockPlan.Kind.MOMENT,
        field,
        dayField,
        -1,
        1,
        0,
        vote.order(),
        zone,
        vote.settled(),
        words);
  }

  private static boolean hasOffset(String[] row, int field, DateOrder order) {
    MomentReader reader = new MomentReader(order);
    return field < row.length
        && reader.read(row[field].toCharArray(), 0, row[field].length())
        && !Double.isNaN(reader.offsetS());
  }

  private String quoted(int field) {
    return InputProblem.quoted(names.get(field));
  }

  private ClockPlan unix(int field) {
    double size = 0;
    for (String[] row : rows) {
      double value = field < row.length ? numbers.read(row[field]) : Double.NaN;
      size = Double.isNaN(value) ? size : Math.max(size, Math.abs(value));
    }
    double unit = size < 2e10 ? 1 : size < 2e13 ? 1e-3 : size < 2e16 ? 1e-6 : 1e-9;
    String key =
        unit == 1
            ? "clock.unix"
            : unit == 1e-3
                ? "clock.unix.milli"
                : unit == 1e-6 ? "clock.unix.micro" : "clock.unix.nano";
    return new ClockPlan(
        ClockPlan.Kind.UNIX,
        field,
        -1,
        -1,
        unit,
        0,
        DateOrder.YEAR_FIRST,
        ZoneOffset.UTC,
        true,
        WORDS.say(key, quoted(field)));
  }

  private ClockPlan elapsed(int field) {
    Unit unit = NameReader.read(names.get(field)).unit().orElse(Unit.SECOND);
    return new ClockPlan(
        ClockPlan.Kind.ELAPSED,
        field,
        -1,
        -1,
        unit.factor(),
        0,
        DateOrder.YEAR_FIRST,
        ZoneOffset.UTC,
        true,
        WORDS.say("clock.elapsed", quoted(field), unit.symbol()));
  }

  /** Takes elapsed seconds as the finer clock when the written one repeats itself. */
  private ClockPlan withFinerColumn(ClockPlan plan, List<Integer> candidates) {
    Optional<Integer> small = first(candidates, Look.SMALL_NUMBER);
    if (small.isEmpty() || !repeats(plan.field()) || repeats(small.get())) {
      return plan;
    }
    Unit unit = NameReader.read(names.get(small.get())).unit().orElse(Unit.SECOND);
    return plan.withElapsed(
        small.get(), unit.factor(), WORDS.say("clock.refined", plan.words(), quoted(small.get())));
  }

  private boolean repeats(int field) {
    for (int i = 1; i < rows.size(); i++) {
      String[] row = rows.get(i);
      String[] before = rows.get(i - 1);
      if (field < row.length && field < before.length && row[field].equals(before[field])) {
        return true;
      }
    }
    return false;
  }
}
