package sagbook.model;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** An estimated quantity: a value with its 95 % interval, or the reason why there is none. */
public sealed interface Estimate {
  /** Half the width of a 95 % interval over the standard uncertainty of a normal distribution. */
  double HALF_WIDTH_IN_SD = 1.959964;

  /**
   * A value with the interval that holds the truth in 95 of 100 cases.
   *
   * @param value best value, {@code low <= value <= high}
   * @param low lower end
   * @param high upper end; positive infinity where the log bounds the truth from below only
   */
  record Known(double value, double low, double high) implements Estimate {
    public Known {
      if (!(low <= value && value <= high) || Double.isInfinite(low) || Double.isInfinite(value)) {
        throw new IllegalArgumentException(
            "an estimate needs low <= value <= high, value and low finite; got "
                + low
                + ", "
                + value
                + ", "
                + high);
      }
    }

    /** Half the width of the interval; of an open one, how far its known end lies off. */
    public double halfWidth() {
      return isOpen() ? value - low : (high - low) / 2;
    }

    /** Standard uncertainty, by half the interval's width. */
    public double sd() {
      return halfWidth() / HALF_WIDTH_IN_SD;
    }

    /** Whether the truth may be larger by any amount. */
    public boolean isOpen() {
      return Double.isInfinite(high);
    }

    /**
     * What it exceeds another by that errs independently of it; neither may be open. Each end is
     * the root of the squares of what pulls to its side, which keeps an uneven range uneven.
     */
    public Known minus(Known other) {
      double difference = value - other.value;
      return new Known(
          difference,
          difference - Math.hypot(value - low, other.high - other.value),
          difference + Math.hypot(high - value, other.value - other.low));
    }

    /** The same without an upper end. */
    public Known open() {
      return new Known(value, low, Double.POSITIVE_INFINITY);
    }

    /** Whether the interval lies wholly above {@code limit}. */
    public boolean isAbove(double limit) {
      return low > limit;
    }

    /** Whether the interval lies wholly below {@code limit}. */
    public boolean isBelow(double limit) {
      return high < limit;
    }
  }

  /**
   * No value.
   *
   * @param reason a plain sentence: why the logs can't tell and what would settle it
   */
  record Unknown(String reason) implements Estimate {
    public Unknown {
      if (reason.isBlank()) {
        throw new IllegalArgumentException("an unknown needs its reason");
      }
    }
  }

  /** Value plus and minus 1.96 times the standard uncertainty. */
  static Known of(double value, double standardUncertainty) {
    if (!(standardUncertainty >= 0)) {
      throw new IllegalArgumentException("standard uncertainty " + standardUncertainty);
    }
    return within(value, HALF_WIDTH_IN_SD * standardUncertainty);
  }

  /** Value plus and minus half the width of its 95 % interval. */
  static Known within(double value, double halfWidth) {
    return new Known(value, value - halfWidth, value + halfWidth);
  }

  static Unknown unknown(String reason) {
    return new Unknown(reason);
  }

  /** The value, if there is one. */
  default OptionalDouble find() {
    return this instanceof Known known ? OptionalDouble.of(known.value()) : OptionalDouble.empty();
  }

  /** The same quantity through a monotone rising function (a change of unit, say). */
  default Estimate map(DoubleUnaryOperator rising) {
    return this instanceof Known k
        ? new Known(
            rising.applyAsDouble(k.value()),
            rising.applyAsDouble(k.low()),
            rising.applyAsDouble(k.high()))
        : this;
  }
}
