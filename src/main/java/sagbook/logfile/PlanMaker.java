package sagbook.logfile;

import java.io.IOException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sagbook.issue.InputProblem;
import sagbook.model.LogMapping;
import sagbook.wording.Words;

/** Works out from the first lines of a file how to read it. */
final class PlanMaker {
  private static final Words WORDS = Words.english();

  private final LogSource source;
  private final Optional<LogMapping> mapping;
  private final ZoneId zone;

  PlanMaker(LogSource source, Optional<LogMapping> mapping, ZoneId zone) {
    this.source = source;
    this.mapping = mapping;
    this.zone = zone;
  }

  FilePlan plan() throws InputProblem {
    Head head = Head.read(source);
    Dialect dialect = Dialect.find(source, head, mapping);
    try {
      return plan(head, dialect, SampleRows.of(head, dialect));
    } catch (IOException e) {
      throw Head.unreadable(source, e);
    }
  }

  private FilePlan plan(Head head, Dialect dialect, SampleRows sample) throws InputProblem {
    if (sample.rows().isEmpty()) {
      throw InputProblem.input("problem.log.only-names", quoted());
    }
    List<Column> named = named(dialect, sample);
    if (dialect.headerLine() == 0
        && !dialect.isJson()
        && named.stream().allMatch(c -> isIgnored(c))) {
      throw InputProblem.usage(
          "problem.log.no-names", quoted(), Integer.toString(dialect.names().size()));
    }
    ClockPlan found = clock(dialect, sample, named);
    ClockPlan clock = new StartFinder(source, zone).settle(found, head, dialect, mapping);
    if (isTall(named)) {
      FilePlan plan = new FilePlan(source, head.charset(), dialect, clock, named, Optional.empty());
      return plan.withTall(new TallFinder(plan, sample).find());
    }
    List<Column> columns = settled(named, sample);
    return new FilePlan(source, head.charset(), dialect, clock, columns, Optional.empty());
  }

  private static boolean isIgnored(Column column) {
    return column.meaning().quantity() == Quantity.IGNORED;
  }

  private String quoted() {
    return InputProblem.quoted(source.name());
  }

  private List<Column> named(Dialect dialect, SampleRows sample) throws InputProblem {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < dialect.names().size(); i++) {
      String name = dialect.names().get(i);
      Optional<String> told = told(name, i);
      if (told.isPresent()) {
        columns.add(
            new Column(i, name, MeaningPhrase.read(told.get(), name), WORDS.say("how.told")));
        continue;
      }
      Meaning meaning = NameReader.read(name);
      String how = WORDS.say("how.name");
      String below = i < dialect.units().size() ? dialect.units().get(i) : sample.unitBehind(i);
      Optional<Unit> unit = Unit.find(below.replaceAll("[\\[\\]()]", ""));
      if (meaning.unit().isEmpty() && unit.isPresent() && unit.get().fits(meaning.quantity())) {
        meaning = meaning.withUnit(unit.get());
        how = WORDS.say("how.name-and-unit");
      }
      columns.add(new Column(i, name, meaning, how));
    }
    return columns;
  }

  private Optional<String> told(String name, int field) {
    return mapping.flatMap(
        m -> {
          String byName = m.columns().get(name);
          return Optional.ofNullable(
              byName != null ? byName : m.columns().get("column " + (field + 1)));
        });
  }

  private static boolean isTall(List<Column> columns) {
    boolean keyed = false;
    boolean valued = false;
    for (Column column : columns) {
      Quantity quantity = column.meaning().quantity();
      keyed |= quantity == Quantity.CELL_NUMBER || quantity == Quantity.CHANNEL_NAME;
      boolean plain =
          column.meaning().cell() < 0
              && (quantity == Quantity.PACK_VOLTAGE || quantity == Quantity.CELL_TEMPERATURE);
      valued |= quantity == Quantity.VALUE || plain;
      if (quantity == Quantity.CELL_VOLTAGE || quantity == Quantity.CELL_UNNAMED) {
        return false;
      }
    }
    return keyed && valued;
  }

  private ClockPlan clock(Dialect dialect, SampleRows sample, List<Column> columns)
      throws InputProblem {
    List<Integer> times = new ArrayList<>();
    for (Column column : columns) {
      if (column.meaning().quantity() == Quantity.TIME) {
        times.add(column.field());
      }
    }
    Optional<ClockPlan> clock = new ClockFinder(dialect, sample.rows(), zone).find(times);
    if (clock.isEmpty()) {
      throw InputProblem.input("problem.log.no-time", quoted(), listed(dialect.names()));
    }
    return ordered(clock.get());
  }

  private ClockPlan ordered(ClockPlan clock) throws InputProblem {
    Optional<String> told = mapping.flatMap(LogMapping::clock);
    if (told.isEmpty()) {
      return clock;
    }
    for (DateOrder order : DateOrder.values()) {
      if (order.words().equals(told.get())) {
        return clock.withOrder(order, WORDS.say("how.told"));
      }
    }
    throw InputProblem.usage("problem.mapping.clock", InputProblem.quoted(told.get()));
  }

  private List<Column> settled(List<Column> named, SampleRows sample) {
    UnitChooser units = new UnitChooser(sample);
    List<Column> columns = new ArrayList<>();
    for (Column column : named) {
      columns.add(units.settle(column));
    }
    return CellNumbering.fromOne(CellNumbering.withOneSensor(units.agree(columns)));
  }

  /** Some of the names, safe to print. */
  static String listed(List<String> names) {
    Set<String> shown = new LinkedHashSet<>();
    for (String name : names.subList(0, Math.min(names.size(), 8))) {
      shown.add(InputProblem.quoted(name));
    }
    String listed = String.join(", ", shown);
    return names.size() > 8 ? WORDS.say("list.more", listed) : listed;
  }
}
