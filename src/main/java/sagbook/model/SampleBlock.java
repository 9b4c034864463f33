package sagbook.model;

/**
 * Some consecutive rows of one bank's log, in columns. Units: s since 1970 (UTC), V, °C, A (charge
 * positive), bleed level 0 to 1. A value that was not logged is NaN. Times rise strictly from row
 * to row and from block to block.
 *
 * <p>A block is a buffer: its owner fills it again after {@link SampleSink#accept} returns, so a
 * sink copies what it keeps.
 */
public final class SampleBlock {
  private final Channels channels;
  private final double[] timeS;
  private final double[] currentA;
  private final double[][] voltageV;
  private final double[][] temperatureC;
  private final double[][] bleedFraction;
  private int rows;

  /** An empty block with room for {@code capacity} rows. */
  public SampleBlock(Channels channels, int capacity) {
    this.channels = channels;
    this.timeS = new double[capacity];
    this.currentA = new double[channels.hasCurrent() ? capacity : 0];
    this.voltageV = new double[channels.seriesCells()][capacity];
    this.temperatureC =
        new double[channels.hasTemperature() ? channels.seriesCells() : 0][capacity];
    this.bleedFraction = new double[channels.hasBleed() ? channels.seriesCells() : 0][capacity];
  }

  public Channels channels() {
    return channels;
  }

  public int rows() {
    return rows;
  }

  public int capacity() {
    return timeS.length;
  }

  /** Says how many rows are filled, 0 to {@link #capacity()}. */
  public void setRows(int rows) {
    if (rows < 0 || rows > timeS.length) {
      throw new IllegalArgumentException("rows " + rows + " of " + timeS.length);
    }
    this.rows = rows;
  }

  /** Seconds since 1970, one a row. The array itself, for speed. */
  public double[] timeS() {
    return timeS;
  }

  /** Ampere, charge positive, one a row; length 0 when the log has no current. */
  public double[] currentA() {
    return currentA;
  }

  /** Volt, one array a cell (cell 1 first). */
  public double[][] voltageV() {
    return voltageV;
  }

  /** °C, one array a cell; length 0 when the log has no temperature. */
  public double[][] temperatureC() {
    return temperatureC;
  }

  /** Bleed level 0 to 1, one array a cell; length 0 when the log has none. */
  public double[][] bleedFraction() {
    return bleedFraction;
  }
}
