package sagbook.simulate;

import java.util.ArrayList;
import java.util.List;
import sagbook.model.Chemistry;

/** The string as built from its plan: cells, joints, boards, and the faults that work on them. */
final class Battery {
  private static final int CELL_MAKES = 1;
  private static final int BOARD_MAKES = 2;
  private static final int BOARD_NOISE = 3;

  final Cell[] cells;
  final Board[] boards;
  final Condition[] conditions;
  private final double[] soundJointMilliohm;
  private final double[] jointOhm;
  private final double fastS;
  private final double slowS;
  private final double ageingPerDay;
  private final List<Fault> faults;

  Battery(Scenario scenario) {
    PackPlan plan = scenario.pack();
    int n = plan.cells();
    cells = new Cell[n];
    boards = new Board[n];
    conditions = new Condition[n];
    soundJointMilliohm = new double[n];
    jointOhm = new double[n];
    faults = new ArrayList<>(scenario.faults());
    ageingPerDay = plan.ageingPercentPerYear() / 100 / 365.25;
    OpenCircuit openCircuit = new OpenCircuit(plan.electrodes());
    List<CellMake> makes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Noise noise = Noise.of(scenario.seed(), CELL_MAKES, i);
      CellMake make = make(plan, noise);
      makes.add(make);
      double middle = StrictMath.sin(Math.PI * (i + 0.5) / n);
      cells[i] = new Cell(make, openCircuit, hysteresisV(plan), 9_000 + 9_000 * middle);
      cells[i].setRoomToFullAh(roomAh(plan, noise, i + 1) + 0.5 * plan.capacityAh());
      soundJointMilliohm[i] =
          plan.jointMilliohm() * (i == n - 1 ? 0.5 : 1) * (1 + 0.2 * noise.normal());
      conditions[i] = new Condition();
      boards[i] = board(scenario, i);
    }
    fastS = makes.get(0).fastS();
    slowS = makes.get(0).slowS();
  }

  private static double hysteresisV(PackPlan plan) {
    return plan.electrodes().chemistry() == Chemistry.LFP ? 0.009 : 0.005;
  }

  private double roomAh(PackPlan plan, Noise noise, int cell) {
    double room = plan.balanceSpreadAh() * noise.normal();
    for (Fault fault : faults) {
      if (fault.cell() == cell) {
        room -= fault.startOffsetPercent() / 100 * plan.capacityAh();
      }
    }
    return room;
  }

  /** Resistances of a 280 Ah cell, scaled by size; the sizes are common practice, no source. */
  private static CellMake make(PackPlan plan, Noise noise) {
    double size = 280 / plan.capacityAh();
    double capacity = plan.capacityAh() * (1.01 + plan.capacitySpread() * noise.normal());
    double common = 1 + plan.resistanceSpread() * noise.normal();
    double leak = (4 + noise.normal()) / size;
    return new CellMake(
        capacity,
        0.110 * size * common * (1 + 0.02 * noise.normal()),
        0.055 * size * common * (1 + 0.05 * noise.normal()),
        3,
        0.130 * size * common * (1 + 0.05 * noise.normal()),
        75,
        Math.max(0, leak));
  }

  private static Board board(Scenario scenario, int i) {
    Noise noise = Noise.of(scenario.seed(), BOARD_MAKES, i);
    BoardMake make =
        new BoardMake(
            1 + 0.0003 * noise.normal(),
            0.8 * noise.normal(),
            scenario.noiseMillivolt(),
            0.3 * noise.normal(),
            scenario.readSkewS() * i / scenario.pack().cells());
    return new Board(make, scenario.pack().bleed(), Noise.of(scenario.seed(), BOARD_NOISE, i));
  }

  int size() {
    return cells.length;
  }

  /** Brings every place's condition to a day of the scenario. */
  void setDay(double day) {
    for (int i = 0; i < cells.length; i++) {
      Condition condition = conditions[i];
      condition.reset();
      condition.lostCapacity = ageingPerDay * day;
      for (Fault fault : faults) {
        if (fault.cell() == i + 1) {
          fault.applyTo(condition, day);
        }
      }
      cells[i].setCondition(condition);
      jointOhm[i] = jointMilliohm(i) / 1000;
    }
  }

  /** Sound joint and what has worked loose. */
  double jointMilliohm(int i) {
    return soundJointMilliohm[i] + conditions[i].looseMilliohm;
  }

  /** What the sense wires of a place see: cell and joint. */
  double sensedVolts(int i, double amps) {
    return cells[i].terminalVolts(amps - boards[i].bleedAmps(cells[i].openCircuitVolts()))
        + amps * jointOhm[i];
  }

  /** Moves every cell on by some seconds at a constant pack current. */
  void advance(double amps, double seconds, double roomC) {
    double fastDecay = StrictMath.exp(-seconds / fastS);
    double slowDecay = StrictMath.exp(-seconds / slowS);
    for (int i = 0; i < cells.length; i++) {
      double volts = cells[i].openCircuitVolts();
      double bled = boards[i].bleedAmps(volts);
      cells[i].advance(amps - bled, seconds, fastDecay, slowDecay, roomC);
      boards[i].warm(volts, seconds);
    }
  }
}
