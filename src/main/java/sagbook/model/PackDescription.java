package sagbook.model;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the keeper tells about the battery.
 *
 * @param name the keeper's own name for it
 * @param chemistry of all cells
 * @param seriesCells cells in series in each bank, 2 to 32
 * @param nominalCapacityAh what the cell maker's sheet says for one place in the string, Ah; where
 *     that was not told, what is reckoned with instead
 * @param capacitySource which of both it is
 * @param timezone for logs whose clock has no offset
 * @param bleedResistorOhm what a board bleeds a cell through; empty when not told
 * @param currentSign as told; empty means it is detected from the logs
 * @param limits what the cells may see
 * @param rules thresholds that the keeper set otherwise than usual
 * @param spareCapacityAh a spare cell's capacity; empty means nominal
 * @param spareResistanceMilliohm a spare cell's resistance; empty means the string's median
 * @param openCircuit the cells' open-circuit curve, where the keeper has one
 * @param banks parallel strings with their own files; empty means one bank called "main"
 * @param logs what is said about log files whose meaning can't be guessed
 */
public record PackDescription(
    String name,
    Chemistry chemistry,
    int seriesCells,
    double nominalCapacityAh,
    CapacitySource capacitySource,
    ZoneId timezone,
    Optional<Double> bleedResistorOhm,
    Optional<CurrentSign> currentSign,
    Limits limits,
    Map<Threshold, Double> rules,
    Optional<Double> spareCapacityAh,
    Optional<Double> spareResistanceMilliohm,
    Optional<OpenCircuitTable> openCircuit,
    List<BankDescription> banks,
    List<LogMapping> logs) {

  /** What boards usually bleed through, ohm. Common practice, no source. */
  private static final double USUAL_BLEED_OHM = 3.3;

  /** What a board bleeds a cell through, as told or as usual, ohm. */
  public double bleedOhm() {
    return bleedResistorOhm.orElse(USUAL_BLEED_OHM);
  }

  /** Whether the keeper told the nominal capacity. */
  public boolean isCapacityTold() {
    return capacitySource == CapacitySource.TOLD;
  }

  /** The same pack reckoned with a capacity that the keeper did not tell, Ah. */
  public PackDescription reckonedWith(double capacityAh, CapacitySource source) {
    return new PackDescription(
        name,
        chemistry,
        seriesCells,
        capacityAh,
        source,
        timezone,
        bleedResistorOhm,
        currentSign,
        limits,
        rules,
        spareCapacityAh,
        spareResistanceMilliohm,
        openCircuit,
        banks,
        logs);
  }

  /** The bank's name when the pack description names none. */
  public static String soleBankName() {
    return "main";
  }

  public PackDescription {
    if (!(seriesCells >= 2 && seriesCells <= 32)) {
      throw new IllegalArgumentException("series_cells must be 2 to 32");
    }
    if (!(nominalCapacityAh > 0 && nominalCapacityAh < 100_000)) {
      throw new IllegalArgumentException("nominal_capacity_ah must be above 0");
    }
    rules = Map.copyOf(rules);
    banks = List.copyOf(banks);
    logs = List.copyOf(logs);
  }

  /** A pack with nothing but the three keys that must be told, and a zone. */
  public static PackDescription of(
      String name, Chemistry chemistry, int seriesCells, double nominalCapacityAh, ZoneId zone) {
    return new PackDescription(
        name,
        chemistry,
        seriesCells,
        nominalCapacityAh,
        CapacitySource.TOLD,
        zone,
        Optional.empty(),
        Optional.empty(),
        Limits.of(chemistry),
        Map.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        List.of());
  }
}
