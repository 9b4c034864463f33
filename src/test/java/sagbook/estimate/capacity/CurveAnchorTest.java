package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.packfile.PackFile;

/**
 * LFP cells whose knee at the end of charge is sharper than that of any published function: that of
 * Afshar et al. (2017) rises by a factor e over 0.7 % of lithium, this one over 0.17 %, about as
 * measured tables do (common practice, no source). The rest is theirs and the graphite is that of
 * Chen et al. (2020).
 */
class CurveAnchorTest {
  private static final double NOMINAL_AH = 100;
  private static final double LFP_SHARE = 0.92;
  private static final double GRAPHITE_SHARE = 0.76;

  private static PackDescription pack(double fullV) throws InputProblem {
    return PackFile.parse(
        "pack.toml",
        """
        [pack]
        name = "Barn"
        chemistry = "lfp"
        series_cells = 8
        nominal_capacity_ah = 100
        [limits]
        cell_full_v = %s
        """
            .formatted(fullV));
  }

  private static double volt(double q) {
    double y = 0.0005 + LFP_SHARE * (1 - q / NOMINAL_AH);
    double x = 0.035 + GRAPHITE_SHARE * q / NOMINAL_AH;
    double positive =
        3.4077 - 0.020269 * y + 0.5 * Math.exp(-600 * y) - 0.9 * Math.exp(-30 * (1 - y));
    double graphite =
        1.9793 * Math.exp(-39.3631 * x)
            + 0.2482
            - 0.0909 * Math.tanh(29.8538 * (x - 0.1234))
            - 0.04478 * Math.tanh(14.9159 * (x - 0.2769))
            - 0.0205 * Math.tanh(30.4444 * (x - 0.6103));
    return positive - graphite;
  }

  private static double place(double volt) {
    double low = -5;
    double high = 102;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (volt(middle) < volt) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static CurveAnchor anchor(double toV, double endV) throws InputProblem {
    return anchor(3.65, toV, endV);
  }

  private static CurveAnchor anchor(double fullV, double toV, double endV) throws InputProblem {
    double step = NOMINAL_AH / 560;
    double[] values = new double[580];
    for (int i = 0; i < values.length; i++) {
      values[i] = volt(Math.min(i * step, place(3.66)));
    }
    EvenTable curve = new EvenTable(0, step, values);
    return CurveAnchor.closest(pack(fullV), curve, place(2.7), place(toV), place(endV))
        .orElseThrow();
  }

  @Test
  void aKneeSharperThanAnyPublishedOneEndsWhereItWasSeenToLead() throws InputProblem {
    assertEquals(place(3.65), anchor(3.40, 3.60).fullAh(), 0.15);
  }

  @Test
  void aKneeThatWasNotSeenEndsWhereGentlerFunctionsPutIt() throws InputProblem {
    double flat = anchor(3.34, 3.34).fullAh();
    assertTrue(flat > place(3.65), "gentler functions end later: " + flat);
  }

  @Test
  void whatWasSeenBeyondFullDoesNotMoveFull() throws InputProblem {
    assertEquals(place(3.45), anchor(3.45, 3.40, 3.60).fullAh(), 0.1);
  }
}
