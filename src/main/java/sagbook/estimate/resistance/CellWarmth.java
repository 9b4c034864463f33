package sagbook.estimate.resistance;

import java.util.Arrays;
import sagbook.numeric.Robust;

/**
 * How much warmer or colder each cell is than the string's median cell, and what that makes of its
 * resistance (Arrhenius): without it a cell at the cold end of a shelf would look resistive.
 *
 * @param inverse mean of {@code 1/T - 1/T(median)} over the windows used, one a cell, 1/K, as far
 *     as thermometers tell it; NaN when its temperature was not logged
 * @param kelvin mean temperature of the string, K; 25 °C when not logged
 * @param apartK how far each cell may be off that, one standard deviation, K
 */
record CellWarmth(double[] inverse, double kelvin, double[] apartK) {
  /** What a board's thermometer says of its cell, one standard deviation. Common practice. */
  private static final double BOARD_K = 0.5;

  /** How far cells of one shelf differ where nothing was logged. Common practice, no source. */
  private static final double SHELF_K = 1;

  /** A thermometer further out than this says nothing of its cell. Common practice, no source. */
  private static final double MOST_K = 8;

  private static final double ZERO_CELSIUS = 273.15;
  private static final double USUAL_CELSIUS = 25;

  /**
   * Means over the windows used.
   *
   * @param trusted whether each cell's thermometer is to be believed
   */
  static CellWarmth of(UsedWindows used, boolean[] trusted) {
    int cells = used.cells();
    double[] sum = new double[cells];
    int[] count = new int[cells];
    double kelvinSum = 0;
    int kelvins = 0;
    for (int w = 0; w < used.size(); w++) {
      double[] celsius = used.windows().get(w).window().meanTemperatureC();
      double middle = Robust.median(celsius);
      if (!(used.scale()[w] > 0) || Double.isNaN(middle)) {
        continue;
      }
      kelvinSum += middle + ZERO_CELSIUS;
      kelvins++;
      for (int c = 0; c < cells; c++) {
        if (!Double.isNaN(celsius[c])) {
          sum[c] += 1 / (celsius[c] + ZERO_CELSIUS) - 1 / (middle + ZERO_CELSIUS);
          count[c]++;
        }
      }
    }
    double kelvin = kelvins == 0 ? USUAL_CELSIUS + ZERO_CELSIUS : kelvinSum / kelvins;
    double[] inverse = new double[cells];
    for (int c = 0; c < cells; c++) {
      double mean = count[c] == 0 ? Double.NaN : sum[c] / count[c];
      inverse[c] = !trusted[c] || Math.abs(mean) > MOST_K / (kelvin * kelvin) ? Double.NaN : mean;
    }
    return shrunk(inverse, kelvin);
  }

  /**
   * What of these departures is the cells' own, where their thermometers scatter of themselves: as
   * large a share of each as makes up for what the scatter adds to their mean square (random
   * effects; Efron and Morris, J. Am. Stat. Assoc. 70 (1975) 311). But no thermometer is out by
   * much more than boards scatter, or one cold cell among cells that are alike would lose its
   * warmth to them (limited translation; Efron and Morris, J. Am. Stat. Assoc. 67 (1972) 130).
   */
  private static CellWarmth shrunk(double[] inverse, double kelvin) {
    double boardInverse = BOARD_K / (kelvin * kelvin);
    double[] known = Arrays.stream(inverse).filter(i -> !Double.isNaN(i)).toArray();
    double squares = Arrays.stream(known).map(i -> i * i).sum();
    double byBoards = known.length * boardInverse * boardInverse;
    double share = squares > byBoards ? 1 - byBoards / squares : 0;
    double atMost = Math.min(1, share + Math.sqrt(2.0 / Math.max(1, known.length)));
    double[] own = new double[inverse.length];
    double[] apartK = new double[inverse.length];
    for (int c = 0; c < own.length; c++) {
      double off = (1 - share) * inverse[c];
      boolean limited = Math.abs(off) > boardInverse;
      own[c] = inverse[c] - (limited ? Math.copySign(boardInverse, off) : off);
      apartK[c] = Double.isNaN(own[c]) ? SHELF_K : limited ? BOARD_K : BOARD_K * Math.sqrt(atMost);
    }
    return new CellWarmth(own, kelvin, apartK);
  }

  /**
   * What turns a cell's resistance into that at the string's temperature.
   *
   * @param kilojoule activation energy, kJ/mol
   */
  double factor(int cell, double kilojoule) {
    return known(cell)
        ? Math.exp(-ReferenceConditions.perInverseKelvin(kilojoule) * inverse[cell])
        : 1;
  }

  /**
   * Relative standard deviation of that factor.
   *
   * @param kilojoule activation energy, kJ/mol
   * @param kilojouleSd its standard deviation, kJ/mol
   */
  double factorSd(int cell, double kilojoule, double kilojouleSd) {
    double byReading =
        ReferenceConditions.perInverseKelvin(kilojoule) * apartK[cell] / (kelvin * kelvin);
    double byLaw =
        known(cell) ? ReferenceConditions.perInverseKelvin(kilojouleSd) * inverse[cell] : 0;
    return Math.hypot(byReading, byLaw);
  }

  private boolean known(int cell) {
    return !Double.isNaN(inverse[cell]);
  }
}
