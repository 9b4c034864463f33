package sagbook.simulate;

/** Something wrong with one place in the string, from a day on. Days count from the first. */
public sealed interface Fault {
  /** Place in the string, 1 for the first. */
  int cell();

  /** Adds the fault's effect on a day to what else is wrong there. */
  void applyTo(Condition condition, double day);

  /** Charge below (negative) or above its neighbours on the first day, % of nominal capacity. */
  default double startOffsetPercent() {
    return 0;
  }

  private static double since(double day, double fromDay) {
    return Math.max(0, day - fromDay);
  }

  /** Cyclable lithium lost: a share gone at the start, then a rate. */
  record LithiumLoss(int cell, double startPercent, double fromDay, double percentPerDay)
      implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      condition.lostCapacity += (startPercent + since(day, fromDay) * percentPerDay) / 100;
    }
  }

  /** Put in at another charge than its neighbours. */
  record OutOfBalance(int cell, double startOffsetPercent) implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      // The offset is there from the first hour and then belongs to the cell's charge.
    }
  }

  /** Loses charge by itself. */
  record SelfDischarge(int cell, double fromDay, double milliamp) implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      condition.leakMilliamp += day >= fromDay ? milliamp : 0;
    }
  }

  /** The cell itself resists more: a share at the start, then a rate. */
  record HighResistance(int cell, double startPercent, double fromDay, double percentPerDay)
      implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      condition.resistanceFactor *= 1 + (startPercent + since(day, fromDay) * percentPerDay) / 100;
    }
  }

  /** A joint that works loose: a step, then a ramp. */
  record LooseJoint(int cell, double fromDay, double stepMilliohm, double milliohmPerDay)
      implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      if (day >= fromDay) {
        condition.looseMilliohm += stepMilliohm + since(day, fromDay) * milliohmPerDay;
      }
    }
  }

  /** A board that shows the wrong voltage. */
  record VoltageOffset(int cell, double fromDay, double millivolt) implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      condition.sensorOffsetMillivolt += day >= fromDay ? millivolt : 0;
    }
  }

  /** A temperature sensor that shows one value only. */
  record StuckThermometer(int cell, double fromDay, double celsius) implements Fault {
    @Override
    public void applyTo(Condition condition, double day) {
      if (day >= fromDay) {
        condition.stuckC = celsius;
      }
    }
  }
}
