package sagbook.account;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Limits;
import sagbook.model.PackDescription;

/** Adds up a bank's days, one by one. */
public final class StressCalendar {
  private final ThinnedRecord record;
  private final PackDescription pack;
  private final Limits limits;
  private final FullState full;
  private final double noiseA;

  private StressCalendar(ThinnedRecord record, PackDescription pack) {
    this.record = record;
    this.pack = pack;
    this.limits = pack.limits();
    this.full = new FullState(record, pack);
    this.noiseA = FullState.NOISE * pack.nominalCapacityAh();
  }

  /** The days on which any cell voltage was logged, in order. */
  public static List<StressDay> of(ThinnedRecord record, PackDescription pack) {
    return new StressCalendar(record, pack).days();
  }

  private List<StressDay> days() {
    TreeMap<LocalDate, List<Integer>> rows = new TreeMap<>();
    for (int row = 0; row < record.rows(); row++) {
      Instant time = Instant.ofEpochSecond((long) Math.floor(record.timeS()[row]));
      LocalDate day = LocalDate.ofInstant(time, pack.timezone());
      rows.computeIfAbsent(day, d -> new ArrayList<>()).add(row);
    }
    List<StressDay> days = new ArrayList<>();
    rows.forEach((day, own) -> add(day, own, days));
    return days;
  }

  private void add(LocalDate day, List<Integer> rows, List<StressDay> into) {
    Extreme highest = new Extreme(1);
    Extreme lowest = new Extreme(-1);
    Extreme warmest = new Extreme(1);
    Extreme coldest = new Extreme(-1);
    Charge charge = new Charge();
    double cool = 0;
    double nearFull = 0;
    double outside = 0;
    for (int row : rows) {
      double hours = record.seconds()[row] / 3600.0;
      double ampere = record.currentA()[row];
      Extreme chill = new Extreme(-1);
      boolean left = false;
      for (int c = 0; c < record.cells(); c++) {
        float volts = record.voltageV()[c][row];
        highest.take(volts, c);
        lowest.take(volts, c);
        left |= volts > limits.cellMaxVoltage() || volts < limits.cellMinVoltage();
      }
      for (int c = 0; c < record.temperatureC().length; c++) {
        float celsius = record.temperatureC()[c][row];
        chill.take(celsius, c);
        left |= isOutside(celsius, ampere);
        warmest.take(celsius, c);
        coldest.take(celsius, c);
      }
      charge.take(ampere * hours);
      boolean charging = ampere > noiseA;
      cool += charging && chill.value < limits.chargeCoolTemperatureC() ? hours : 0;
      nearFull += full.isNear(row) ? hours : 0;
      outside += left ? hours : 0;
    }
    if (highest.cell > 0) {
      into.add(
          new StressDay(
              day,
              highest.value,
              highest.cell,
              lowest.value,
              lowest.cell,
              coldest.value,
              warmest.value,
              charge.in,
              charge.out,
              charge.deepest,
              cool,
              nearFull,
              outside));
    }
  }

  private boolean isOutside(double celsius, double ampere) {
    boolean charging =
        ampere > 0
            && (celsius < limits.chargeMinTemperatureC()
                || celsius > limits.chargeMaxTemperatureC());
    boolean discharging =
        ampere < 0
            && (celsius < limits.dischargeMinTemperatureC()
                || celsius > limits.dischargeMaxTemperatureC());
    return charging || discharging;
  }

  /** The highest or the lowest of what it is shown; NaN before the first. */
  private static final class Extreme {
    private final int sign;
    private double value = Double.NaN;
    private int cell;

    Extreme(int sign) {
      this.sign = sign;
    }

    void take(double shown, int index) {
      if (Double.isFinite(shown) && !(sign * shown <= sign * value)) {
        value = shown;
        cell = index + 1;
      }
    }
  }

  /** Charge of a day as it comes and goes. */
  private static final class Charge {
    private double in;
    private double out;
    private double deepest;
    private double since;

    void take(double ah) {
      if (Double.isFinite(ah)) {
        in += ah > 0 ? ah : 0;
        out -= ah < 0 ? ah : 0;
        since = Math.max(0, since - ah);
        deepest = Math.max(deepest, since);
      }
    }
  }
}
