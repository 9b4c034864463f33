package sagbook.model;

/**
 * A bench test of a single cell, row by row.
 *
 * @param name of the cell or its file
 * @param timeS rising, s
 * @param voltageV V
 * @param currentA A, of either sign convention
 */
public record BenchLog(String name, double[] timeS, double[] voltageV, double[] currentA) {
  public BenchLog {
    if (timeS.length != voltageV.length || timeS.length != currentA.length || timeS.length < 3) {
      throw new IllegalArgumentException("a bench test needs three columns of three rows or more");
    }
  }
}
