package sagbook.report.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

final class ThinningTest {
  @Test
  void keepsOnlyTheEndsOfAStraightLine() {
    double[] x = {0, 1, 2, 3, 4};
    assertArrayEquals(new int[] {0, 4}, Thinning.kept(x, new double[] {0, 2, 4, 6, 8}, 0.01));
  }

  @Test
  void keepsAPeakOfOnePoint() {
    double[] x = new double[1000];
    double[] y = new double[1000];
    Arrays.setAll(x, i -> i * 0.5);
    y[617] = 3;
    int[] kept = Thinning.kept(x, y, 0.25);
    assertTrue(Arrays.stream(kept).anyMatch(i -> i == 617));
    assertTrue(kept.length <= 5);
  }

  @RepeatedTest(20)
  void leavesNoPointFurtherThanTheToleranceFromTheLine(RepetitionInfo info) {
    SplittableRandom random = new SplittableRandom(info.getCurrentRepetition());
    double[] x = new double[500];
    double[] y = new double[500];
    for (int i = 1; i < x.length; i++) {
      x[i] = x[i - 1] + random.nextDouble();
      y[i] = y[i - 1] + random.nextDouble() - 0.5;
    }
    int[] kept = Thinning.kept(x, y, 0.5);
    for (int k = 1; k < kept.length; k++) {
      for (int i = kept[k - 1]; i <= kept[k]; i++) {
        double share = (x[i] - x[kept[k - 1]]) / (x[kept[k]] - x[kept[k - 1]]);
        double line = y[kept[k - 1]] + share * (y[kept[k]] - y[kept[k - 1]]);

        double slope = (y[kept[k]] - y[kept[k - 1]]) / (x[kept[k]] - x[kept[k - 1]]);
        assertTrue(Math.abs(y[i] - line) / Math.hypot(1, slope) <= 0.5 + 1e-9);
      }
    }
  }
}
