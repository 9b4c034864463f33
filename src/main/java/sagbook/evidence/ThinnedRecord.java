package sagbook.evidence;

/**
 * The log averaged to about one row a minute. Single precision holds a volt to 0.0003 mV, which is
 * far below any board's resolution.
 *
 * @param timeS middle of the row, s since 1970
 * @param seconds time the row covers, s
 * @param segment rises by one behind every gap over which the charge counter can't be carried
 * @param currentA mean current, charge positive; NaN when not logged
 * @param chargeAh charge counter at the middle of the row, Ah, from 0 at the start of the log;
 *     counted at the full rate of the log; NaN without current
 * @param voltageV mean voltage, [cell][row]; NaN when no sample was valid
 * @param temperatureC mean temperature, [cell][row], or no arrays when not logged
 * @param bleedFraction mean bleed level 0 to 1, [cell][row], or no arrays when not logged
 */
public record ThinnedRecord(
    double[] timeS,
    float[] seconds,
    int[] segment,
    float[] currentA,
    double[] chargeAh,
    float[][] voltageV,
    float[][] temperatureC,
    float[][] bleedFraction) {

  public int rows() {
    return timeS.length;
  }

  public int cells() {
    return voltageV.length;
  }

  public boolean hasTemperature() {
    return temperatureC.length > 0;
  }

  public boolean hasBleed() {
    return bleedFraction.length > 0;
  }

  /** The same record as if bleeding had not been logged. */
  public ThinnedRecord withoutBleed() {
    return new ThinnedRecord(
        timeS, seconds, segment, currentA, chargeAh, voltageV, temperatureC, new float[0][]);
  }
}
