package sagbook.align;

/**
 * Steps of a quantity in time order.
 *
 * @param timeS middle of each step by its log's own clock, s
 * @param step size with sign, any unit
 */
public record EdgeTrain(double[] timeS, double[] step) {
  public EdgeTrain {
    if (timeS.length != step.length) {
      throw new IllegalArgumentException("times and steps must be as many");
    }
  }

  public int size() {
    return timeS.length;
  }
}
