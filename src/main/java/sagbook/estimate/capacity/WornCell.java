package sagbook.estimate.capacity;

import java.util.List;
import java.util.function.Function;
import sagbook.estimate.capacity.CellReading.Figure;

/**
 * What a cell that lost capacity on a sloping curve came out as; charges as shares of nominal
 * capacity.
 *
 * @param loss charge that it holds less between full and empty
 * @param empty how much later it is empty
 * @param full how much later it is full
 * @param offsetV constant error of its voltage, V
 * @param misfit its residuals over what a curve is held to miss, at least 1
 */
record WornCell(Figure loss, Figure empty, Figure full, Figure offsetV, double misfit) {

  /** The mean of several, with what they differ by. */
  static WornCell mean(List<WornCell> cells, double[] weight) {
    return new WornCell(
        mean(cells, weight, WornCell::loss),
        mean(cells, weight, WornCell::empty),
        mean(cells, weight, WornCell::full),
        mean(cells, weight, WornCell::offsetV),
        mean(cells, weight, c -> new Figure(c.misfit(), 0)).value());
  }

  private static Figure mean(List<WornCell> cells, double[] weight, Function<WornCell, Figure> of) {
    double sum = 0;
    double mean = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i];
      mean += weight[i] * of.apply(cells.get(i)).value();
    }
    mean /= sum;
    double variance = 0;
    for (int i = 0; i < weight.length; i++) {
      Figure one = of.apply(cells.get(i));
      variance += weight[i] / sum * (sq(one.sd()) + sq(one.value() - mean));
    }
    return new Figure(mean, Math.sqrt(variance));
  }

  /**
   * As a reading of its cell.
   *
   * @param driftAhPerDay how it drifts
   * @param atEndAh how much further than at mid log it has drifted and bled at its end, Ah
   */
  CellReading reading(Figure driftAhPerDay, Figure atEndAh, double nominalAh) {
    return new CellReading(
        ah(loss, new Figure(0, 0), nominalAh),
        ah(empty, atEndAh, nominalAh),
        ah(full, atEndAh, nominalAh),
        driftAhPerDay,
        offsetV,
        misfit,
        true);
  }

  private static Figure ah(Figure share, Figure addedAh, double nominalAh) {
    return new Figure(
        share.value() * nominalAh + addedAh.value(),
        Math.hypot(share.sd() * nominalAh, addedAh.sd()));
  }

  private static double sq(double x) {
    return x * x;
  }
}
