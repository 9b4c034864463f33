package sagbook.simulate;

/**
 * What a simulated log holds besides time and cell voltages.
 *
 * @param current the pack's current
 * @param temperature one a cell
 * @param bleed one a cell
 */
public record Logged(boolean current, boolean temperature, boolean bleed) {
  public static Logged everything() {
    return new Logged(true, true, true);
  }
}
