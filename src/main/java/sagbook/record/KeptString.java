package sagbook.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;
import sagbook.whatif.Spare;
import sagbook.whatif.Use;
import sagbook.whatif.WhatIf;
import sagbook.wording.Words;

/**
 * What results.json keeps of a string, as far as a what-if needs it.
 *
 * @param bank its name
 * @param cells estimates, cell 1 first; what no what-if needs is unknown
 * @param usableAh what the string gave, Ah
 * @param medianAh capacity of the median cell, Ah
 * @param nominalAh nominal capacity, Ah
 * @param chemistry of its cells
 * @param emptyVoltage rest voltage that counts as empty, V
 * @param use how the household used it
 * @param spare that the check reckoned with
 */
public record KeptString(
    String bank,
    List<CellEstimates> cells,
    Estimate usableAh,
    Estimate medianAh,
    double nominalAh,
    Chemistry chemistry,
    double emptyVoltage,
    Use use,
    Spare spare) {
  private static final Words WORDS = Words.english();
  private static final ObjectMapper MAPPER = new ObjectMapper();

  public KeptString {
    cells = List.copyOf(cells);
  }

  /** What a cell takes from the string by itself, Ah; 0 where it is unknown. */
  public double costAloneAh(int cell) {
    return whatIf(spare).prospect().costs().get(cell - 1).aloneAh().find().orElse(0);
  }

  /**
   * How far a resistance lies from the string's median, as a share.
   *
   * @param milliohm mΩ; empty for unknown, which counts as 0
   */
  public double mismatch(OptionalDouble milliohm) {
    double[] own =
        cells.stream().flatMapToDouble(c -> c.resistanceMilliohm().find().stream()).toArray();
    return own.length == 0 || milliohm.isEmpty()
        ? 0
        : Math.abs(milliohm.getAsDouble() / Robust.median(own) - 1);
  }

  /** What-ifs with a spare of the caller's choice. */
  public WhatIf whatIf(Spare other) {
    return new WhatIf(cells, medianAh, nominalAh, chemistry, emptyVoltage, use, other);
  }

  /**
   * The strings of a results.json.
   *
   * @throws IllegalArgumentException when it is not one, saying what is wrong
   */
  public static List<KeptString> parse(String text) {
    KeptCheck check = KeptCheck.parse(text);
    try {
      JsonNode root = MAPPER.readTree(text);
      List<KeptString> strings = new ArrayList<>();
      for (int b = 0; b < check.banks().size(); b++) {
        strings.add(of(check.banks().get(b), root.path("banks").path(b), root));
      }
      return strings;
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(WORDS.say("problem.results.json"), e);
    }
  }

  private static KeptString of(KeptCheck.Bank bank, JsonNode node, JsonNode root) {
    List<CellEstimates> cells = new ArrayList<>();
    for (KeptCheck.Cell cell : bank.cells()) {
      cells.add(estimates(cell));
    }
    double discharged = node.path("discharged_ah").asDouble();
    double volt = 1000 * node.path("discharged_kwh").asDouble() / discharged;
    double nominal = positive(root, "nominal_capacity_ah");
    JsonNode spare = node.path("spare");
    return new KeptString(
        bank.bank(),
        cells,
        KeptCheck.estimate(node, "string_usable_ah"),
        KeptCheck.estimate(node, "median_capacity_ah"),
        nominal,
        Chemistry.find(node.path("chemistry").asText())
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        WORDS.say("problem.results.unknown", "chemistry"))),
        positive(node, "cell_empty_v"),
        new Use(find(node, "evening_load_w"), finite(volt), find(node, "highest_discharge_a")),
        new Spare(
            positive(spare, "capacity_ah"),
            find(spare, "resistance_mohm"),
            spare.path("told").asBoolean()));
  }

  private static CellEstimates estimates(KeptCheck.Cell cell) {
    return new CellEstimates(
        cell.cell(),
        cell.estimate(Quantity.CAPACITY_AH),
        cell.estimate(Quantity.CAPACITY_RELATIVE),
        cell.estimate(Quantity.RESISTANCE_MOHM),
        cell.estimate(Quantity.RESISTANCE_RELATIVE),
        cell.estimate(Quantity.OHMIC_EXCESS_MOHM),
        cell.estimate(Quantity.SLOW_RESPONSE_RELATIVE),
        cell.estimate(Quantity.CHARGE_OFFSET_PERCENT),
        cell.estimate(Quantity.SELF_DISCHARGE_MA),
        cell.estimate(Quantity.VOLTAGE_OFFSET_MV),
        new TemperatureFault.NotLogged(),
        Optional.empty());
  }

  private static double positive(JsonNode node, String key) {
    double value = node.path(key).asDouble();
    if (!(value > 0)) {
      throw new IllegalArgumentException(WORDS.say("problem.results.older", key));
    }
    return value;
  }

  private static OptionalDouble find(JsonNode node, String key) {
    return finite(node.path(key).asDouble(Double.NaN));
  }

  private static OptionalDouble finite(double value) {
    return Double.isFinite(value) && value > 0 ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
