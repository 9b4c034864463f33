package sagbook.estimate.axis;

import sagbook.evidence.ThinnedRecord;

/**
 * The charge counter with the gaps of the log seen to. A short gap is bridged by the mean of the
 * currents before and after it; over a longer one anything may have happened.
 *
 * @param timeS one a thinned row, s
 * @param ah counted charge, Ah
 * @param section number of the section that a row belongs to; long gaps lie between them
 */
record Counter(double[] timeS, double[] ah, int[] section) {
  /** Over a quarter of an hour a house's load is taken to stay. Common practice, no source. */
  private static final double LONGEST_BRIDGE_S = 900;

  /** Time between anchors below which a sensor's offset can't be told, s. */
  private static final double SHORTEST_DRIFT_S = 43_200;

  static Counter of(ThinnedRecord record) {
    int rows = record.rows();
    double[] ah = new double[rows];
    int[] section = new int[rows];
    double missedAh = 0;
    for (int r = 0; r < rows; r++) {
      if (r > 0) {
        double gapS = record.timeS()[r] - record.timeS()[r - 1];
        boolean gap = record.segment()[r] != record.segment()[r - 1];
        boolean bridged = gap && gapS <= LONGEST_BRIDGE_S;
        double meanA = (record.currentA()[r - 1] + record.currentA()[r]) / 2;
        missedAh += bridged && !Double.isNaN(meanA) ? meanA * gapS / 3600 : 0;
        section[r] = section[r - 1] + (gap && !bridged ? 1 : 0);
      }
      ah[r] = record.chargeAh()[r] + missedAh;
    }
    return new Counter(record.timeS(), ah, section);
  }

  boolean together(int one, int other) {
    return section[one] == section[other];
  }

  /** Mean rate at which the counter runs away between anchors of the same section, Ah/s. */
  double drift(int[] anchorRow, double[] anchorAh) {
    double seconds = 0;
    double sum = 0;
    for (int k = 1; k < anchorRow.length; k++) {
      if (together(anchorRow[k - 1], anchorRow[k])) {
        seconds += timeS[anchorRow[k]] - timeS[anchorRow[k - 1]];
        sum += anchorAh[k] - anchorAh[k - 1];
      }
    }
    return seconds > SHORTEST_DRIFT_S ? sum / seconds : 0;
  }

  /** What the counter reads too much at a row, by the anchors before and after it; -1 for none. */
  double runaway(int row, int before, int after, int[] anchorRow, double[] anchorAh, double rate) {
    if (before < 0 && after < 0) {
      return Double.NaN;
    }
    if (before < 0) {
      return anchorAh[after] - rate * (timeS[anchorRow[after]] - timeS[row]);
    }
    double sinceS = timeS[row] - timeS[anchorRow[before]];
    if (after < 0) {
      return anchorAh[before] + rate * sinceS;
    }
    double share = sinceS / (timeS[anchorRow[after]] - timeS[anchorRow[before]]);
    return anchorAh[before] + share * (anchorAh[after] - anchorAh[before]);
  }
}
