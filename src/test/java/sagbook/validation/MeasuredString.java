package sagbook.validation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A string of eight cells whose open-circuit curve is a measured table, in a house on solar power:
 * the curve is none of the published functions that Sagbook knows. Cells differ in size only along
 * the whole curve. Boards read to a millivolt with half a millivolt of noise, a row each 30 s.
 *
 * @param curve measured charge fraction and volts, one row a point, rising
 * @param hysteresisV half the gap between charge and discharge, V
 * @param capacityAh of each cell over the whole table, Ah
 * @param missingAh how much each cell stands below the fullest at the start, Ah
 * @param resistanceFactor of each cell
 * @param fullV terminal voltage at which the charger holds
 * @param cutV terminal voltage at which loads are cut off
 */
record MeasuredString(
    List<double[]> curve,
    double hysteresisV,
    double[] capacityAh,
    double[] missingAh,
    double[] resistanceFactor,
    double fullV,
    double cutV) {
  static final double NOMINAL_AH = 280;

  /** Resistance at 25 °C, about that of a large cell, ohm. */
  private static final double OHM = 3.5e-4;

  /** Share of it that answers at once, the rest with this time constant, s. */
  private static final double AT_ONCE = 0.6;

  private static final double SLOW_S = 20;

  /** Activation energy within what was measured on a whole LFP cell (Naumann 2018), J/mol. */
  private static final double ENERGY = 15_000;

  private static final int STEP_S = 5;
  private static final int STEPS_A_ROW = 6;
  private static final double FADE = Math.exp(-STEP_S / SLOW_S);
  private static final long FIRST_S = 1_748_800_000;

  /** Charge fraction and volts of a table beside the project. */
  static List<double[]> table(String folder, String file) throws IOException {
    Path path = SharedData.folder(folder).resolve(file);
    return Files.readAllLines(path).stream()
        .skip(1)
        .map(line -> Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray())
        .sorted((a, b) -> Double.compare(a[0], b[0]))
        .toList();
  }

  double openCircuit(double share) {
    return along(0, share, 1);
  }

  /** Charge fraction at a voltage. */
  double shareAt(double volt) {
    return along(1, volt, 0);
  }

  /** Straight between points, and beyond the ends. */
  private double along(int from, double at, int to) {
    int low = 0;
    int high = curve.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (curve.get(middle)[from] < at) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double[] a = curve.get(low);
    double[] b = curve.get(high);
    return a[to] + (b[to] - a[to]) * (at - a[from]) / (b[from] - a[from]);
  }

  /** Resistance of a usual cell this long after a step at 25 °C, mΩ. */
  static double milliohm(double ageS) {
    return 1000 * OHM * (AT_ONCE + (1 - AT_ONCE) * (1 - Math.exp(-ageS / SLOW_S)));
  }

  /** The log of some days, a CSV file's text. */
  String log(int days) {
    int cells = capacityAh.length;
    int rows = days * 86_400 / (STEP_S * STEPS_A_ROW);
    StringBuilder text = new StringBuilder("time,current_a");
    for (String name : List.of("v", "t")) {
      for (int c = 1; c <= cells; c++) {
        text.append(',').append(name).append(c);
      }
    }
    text.append('\n');
    House house = new House();
    double[] charge = new double[cells];
    for (int c = 0; c < cells; c++) {
      charge[c] = capacityAh[c] - 0.45 * NOMINAL_AH - missingAh[c];
    }
    double[] slow = new double[cells];
    double[] volt = new double[cells];
    double hysteresis = 0;
    double current = 0;
    for (int step = 0; step < rows * STEPS_A_ROW; step++) {
      double celsius = celsius(step * STEP_S);
      double warm = Math.exp(ENERGY / 8.314462618 * (1 / (celsius + 273.15) - 1 / 298.15));
      double turned = Math.abs(current) * STEP_S / 3600 / (0.03 * NOMINAL_AH);
      hysteresis += (Math.signum(current) - hysteresis) * (1 - Math.exp(-turned));
      for (int c = 0; c < cells; c++) {
        charge[c] += current * STEP_S / 3600;
        double ohm = OHM * warm * resistanceFactor[c];
        slow[c] = slow[c] * FADE + (1 - AT_ONCE) * ohm * current * (1 - FADE);
        volt[c] =
            openCircuit(charge[c] / capacityAh[c])
                + hysteresisV * hysteresis
                + AT_ONCE * ohm * current
                + slow[c];
      }
      if (step % STEPS_A_ROW == 0) {
        text.append(FIRST_S + (long) step * STEP_S).append(',');
        text.append(Math.rint(10 * current) / 10);
        for (double v : volt) {
          text.append(',').append(Math.rint(1000 * v + 0.5 * house.normal()) / 1000);
        }
        text.append(("," + Math.rint(2 * celsius) / 2).repeat(cells)).append('\n');
      }
      Arrays.sort(volt);
      current = house.current(step * STEP_S, volt[0], volt[cells - 1]);
    }
    return text.toString();
  }

  private static double celsius(int second) {
    double day = second / 86_400.0;
    return 20 + 6 * Math.sin(2 * Math.PI * day - 2) + 0.2 * day;
  }

  /** Sun, loads, a charger that holds the highest cell, a cut-off for the lowest. */
  private final class House {
    private final SplittableRandom random = new SplittableRandom(4);
    private double sun;
    private double load;
    private double held = 1;
    private boolean full;
    private boolean empty;

    double normal() {
      double sum = -6;
      for (int i = 0; i < 12; i++) {
        sum += random.nextDouble();
      }
      return sum;
    }

    double current(int second, double lowest, double highest) {
      int day = second / 86_400;
      double hour = second % 86_400 / 3600.0;
      if (random.nextInt(60) == 0) {
        sun = 0.4 + 0.6 * random.nextDouble();
      }
      if (random.nextInt(120) == 0) {
        boolean evening = hour > 17 && hour < 23;
        load = 3 + (random.nextInt(evening ? 2 : 6) == 0 ? 60 * random.nextDouble() : 0);
      }
      double in = hour > 8 && hour < 16 ? 80 * sun * Math.sin(Math.PI * (hour - 8) / 8) : 0;
      // Every third evening a heater runs until the loads are cut off.
      double out = load + (day % 3 == 2 && hour > 18 && hour < 24 ? 45 : 0);
      held = Math.max(0.02, Math.min(1, held * (highest > fullV ? 0.94 : 1.02)));
      full = full ? hour > 8 : highest > fullV && held * in < 0.02 * NOMINAL_AH && in > 0;
      empty = empty ? in < out : lowest < cutV;
      return (full ? 0 : held * in) - (empty ? 0 : full && in > 0 ? Math.max(0, out - in) : out);
    }
  }
}
