package sagbook.simulate;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

/**
 * Runs a scenario from its first day to its last. The clock keeps one offset all year, an hour
 * ahead of UTC.
 */
public final class Simulation {
  private static final ZoneOffset OFFSET = ZoneOffset.ofHours(1);
  private static final int DAY_S = 86_400;
  private static final int HOUR_S = 3_600;

  private final Scenario scenario;
  private final RowSink sink;
  private final Battery battery;
  private final Season season;
  private final Household household;
  private final Controller controller;
  private final CurrentSensor sensor;
  private final TruthKeeper truth;
  private final LogRow row;
  private final double scale;
  private double amps;

  private Simulation(Scenario scenario, RowSink sink) {
    this.scenario = scenario;
    this.sink = sink;
    PackPlan plan = scenario.pack();
    battery = new Battery(scenario);
    season = new Season(scenario.seed(), 0);
    household = new Household(scenario.seed());
    controller = new Controller(plan.limits(), plan.capacityAh());
    scale = plan.capacityAh() / 280;
    Noise built = Noise.of(scenario.seed(), 4, 0);
    sensor =
        new CurrentSensor(
            1 + 0.002 * built.normal(),
            0.03 * scale * built.normal(),
            0.03,
            Noise.of(scenario.seed(), 5, 0));
    truth = new TruthKeeper(battery, plan.capacityAh());
    row = new LogRow(plan.cells());
  }

  /** The clock's offset from UTC in every simulated log. */
  static ZoneOffset offset() {
    return OFFSET;
  }

  /**
   * Runs a scenario.
   *
   * @return the truth, month by month and cell by cell
   */
  static List<TruthRow> run(Scenario scenario, RowSink sink) throws IOException {
    return new Simulation(scenario, sink).run();
  }

  /** The battery as a scenario leaves it. */
  static Battery finalBattery(Scenario scenario) throws IOException {
    Simulation simulation = new Simulation(scenario, row -> {});
    simulation.run();
    return simulation.battery;
  }

  private List<TruthRow> run() throws IOException {
    for (int d = 0; d < scenario.days(); d++) {
      LocalDate date = scenario.from().plusDays(d);
      Season.Day day = season.day(date);
      if (d == 0) {
        for (Cell cell : battery.cells) {
          cell.settleAt(day.roomC(0));
        }
      }
      runDay(d, date, day, household.plan(date, day));
    }
    return truth.rows();
  }

  private void runDay(int d, LocalDate date, Season.Day day, DayPlan plan) throws IOException {
    long midnightS = date.toEpochSecond(java.time.LocalTime.MIDNIGHT, OFFSET);
    int cadence = scenario.cadenceS();
    for (int second = 0; second < DAY_S; second += cadence) {
      if (second % HOUR_S < cadence) {
        battery.setDay(d + (double) second / DAY_S);
      }
      if (second == 0) {
        truth.note(date);
      }
      takeControl(cadence);
      amps = batteryAmps(plan, second);
      row.timeS = midnightS + second;
      step(plan, second, cadence, day.roomC(second));
      sink.accept(row);
    }
  }

  /** Boards and charger look at the string and decide for the next stretch. */
  private void takeControl(int cadence) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    double sum = 0;
    boolean bleeding = controller.holding() || amps > 1;
    for (int i = 0; i < battery.size(); i++) {
      double volts = battery.sensedVolts(i, amps);
      battery.boards[i].decide(
          volts, battery.cells[i].temperatureC(), battery.conditions[i], bleeding);
      double believed = volts + battery.conditions[i].sensorOffsetMillivolt / 1000;
      lowest = Math.min(lowest, believed);
      highest = Math.max(highest, believed);
      sum += believed;
    }
    controller.observe(lowest, highest, sum / battery.size(), amps, cadence);
  }

  private double batteryAmps(DayPlan plan, int second) {
    return controller.batteryAmps(
        scale * plan.supplyA(second), scale * plan.loadA(second), plan.reserve(second));
  }

  /** Reads the row while the household's switches fall where they fall, and moves the cells on. */
  private void step(DayPlan plan, int second, int cadence, double roomC) {
    double at = second;
    int end = second + cadence;
    int read = 0;
    boolean currentRead = false;
    while (at < end) {
      int change = plan.nextChangeAfter((int) at);
      double next = Math.min(end, change == DAY_S ? end : change + switchLag(change));
      if (!currentRead && second + scenario.readSkewS() / 2 < next) {
        row.currentTenths = sensor.readTenths(amps);
        currentRead = true;
      }
      for (; read < battery.size() && second + battery.boards[read].readDelayS() < next; read++) {
        readBoard(read);
      }
      battery.advance(amps, next - at, roomC);
      at = next;
      if (next < end) {
        amps = batteryAmps(plan, (int) next);
      }
    }
  }

  /** Switches don't fall on full seconds: 0 to 0.99 s later, always the same for one second. */
  private static double switchLag(int second) {
    return (second * 37L % 100) / 100.0;
  }

  private void readBoard(int i) {
    Condition condition = battery.conditions[i];
    Board board = battery.boards[i];
    row.millivolt[i] = board.readMillivolt(battery.sensedVolts(i, amps), condition);
    row.halfDegrees[i] = board.readHalfDegrees(battery.cells[i].temperatureC(), condition);
    row.bleedPercent[i] = board.bleedPercent();
  }
}
