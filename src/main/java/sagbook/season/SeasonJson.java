package sagbook.season;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.Rounded;
import sagbook.wording.Words;

/**
 * season.json: the contract that scripts read, described field by field in {@code
 * season.schema.json}. The same record gives the same bytes.
 */
public final class SeasonJson {
  private static final int SCHEMA_VERSION = 1;
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private SeasonJson() {}

  /**
   * The whole file, ending with a line feed.
   *
   * @param software version that made it
   */
  public static String text(SeasonResult season, String software) {
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(lines);
    printer.indentArraysWith(lines);
    try {
      return MAPPER.writer(printer).writeValueAsString(tree(season, software)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain nodes has always a text", e);
    }
  }

  private static ObjectNode tree(SeasonResult season, String software) {
    ObjectNode root = NODES.objectNode();
    root.put("schema_version", SCHEMA_VERSION);
    root.put("software", "sagbook " + software);
    root.put("pack", season.battery().pack());
    root.put("timezone", season.battery().zone().getId());
    root.put("nominal_capacity_ah", Rounded.of(season.battery().nominalCapacityAh()));
    ArrayNode banks = root.putArray("banks");
    for (SeasonResult.Bank bank : season.banks()) {
      banks.add(bank(bank));
    }
    return root;
  }

  private static ObjectNode bank(SeasonResult.Bank bank) {
    ObjectNode node = NODES.objectNode();
    node.put("bank", bank.bank());
    node.put("from", bank.from().toString());
    node.put("to", bank.to().toString());
    node.put("months", bank.months().size());
    node.put("headline", bank.headline());
    estimate(node, "capacity_trend_percent_per_year", bank.capacityTrend());
    estimate(node, "resistance_trend_percent_per_year", bank.resistanceTrend());
    node.put("ageing", bank.isAgeing());
    ArrayNode findings = node.putArray("findings");
    for (SeasonResult.Stretch stretch : bank.findings()) {
      findings.add(finding(stretch));
    }
    sentences(node.putArray("evidence"), bank.evidence());
    stress(node.putObject("stress"), bank.stress());
    ArrayNode effects = node.putArray("effects");
    for (SeasonResult.Effect effect : bank.effects()) {
      effects.add(effect(effect));
    }
    ArrayNode changes = node.putArray("change_points");
    for (SeasonResult.Change change : bank.changes()) {
      changes.add(change(change));
    }
    ArrayNode cells = node.putArray("cells");
    for (SeasonResult.Cell cell : bank.cells()) {
      cells.add(cell(cell));
    }
    return node;
  }

  private static ObjectNode finding(SeasonResult.Stretch stretch) {
    ObjectNode node = NODES.objectNode();
    node.put("cell", stretch.cell());
    node.put("finding", stretch.finding().words());
    node.put("from", stretch.from().toString());
    node.put("to", stretch.to().toString());
    node.put("lasts", stretch.lasts());
    return node;
  }

  private static ObjectNode cell(SeasonResult.Cell cell) {
    ObjectNode node = NODES.objectNode();
    node.put("cell", cell.cell());
    node.put("mark", cell.mark());
    node.put("months", cell.months());
    estimate(node, "capacity_trend_percent_per_year", cell.capacityTrend());
    estimate(node, "capacity_trend_against_string_percent_per_year", cell.capacityAgainstString());
    estimate(node, "resistance_trend_percent_per_year", cell.resistanceTrend());
    estimate(
        node, "resistance_trend_against_string_percent_per_year", cell.resistanceAgainstString());
    node.put("drifting", cell.isDrifting());
    estimate(node, "years_to_80_percent", cell.yearsTo80());
    estimate(node, "years_to_70_percent", cell.yearsTo70());
    sentences(node.putArray("evidence"), cell.evidence());
    return node;
  }

  private static void stress(ObjectNode node, StressAccount stress) {
    number(node, "hours", stress.hours());
    number(node, "charged_ah", stress.chargedAh());
    number(node, "discharged_ah", stress.dischargedAh());
    number(node, "charged_kwh", stress.chargedKWh());
    number(node, "discharged_kwh", stress.dischargedKWh());
    number(node, "full_cycles", stress.fullCycles());
    number(node, "full_charge_days", stress.fullChargeDays());
    number(node, "highest_discharge_a", stress.highestDischargeA());
    number(node, "highest_voltage_v", stress.highestV());
    number(node, "lowest_voltage_v", stress.lowestV());
    number(node, "highest_temperature_c", stress.highestC());
    number(node, "lowest_temperature_c", stress.lowestC());
    number(node, "hours_above_max_voltage", stress.hoursAboveMax());
    number(node, "hours_below_min_voltage", stress.hoursBelowMin());
    number(node, "hours_charging_cold", stress.hoursChargingCold());
    number(node, "hours_charging_hot", stress.hoursChargingHot());
    number(node, "hours_hot", stress.hoursHot());
  }

  private static ObjectNode effect(SeasonResult.Effect effect) {
    ObjectNode node = NODES.objectNode();
    DiaryEvent event = effect.event();
    node.put("day", event.day().toString());
    node.put("kind", event.kind().words());
    node.put("cell", event.cell());
    node.put("mark", event.mark());
    node.put("text", event.text());
    node.put("quantity", effect.quantity().key());
    estimate(node, "before", effect.before());
    estimate(node, "after", effect.after());
    estimate(node, "change", effect.change());
    node.put("words", effect.words());
    return node;
  }

  private static ObjectNode change(SeasonResult.Change change) {
    ObjectNode node = NODES.objectNode();
    node.put("cell", change.cell());
    node.put("quantity", change.quantity().key());
    node.put("after", change.after().toString());
    node.put("before", change.before().toString());
    node.put("change", Rounded.of(change.change()));
    node.put("p", Rounded.of(change.p()));
    node.put("words", change.words());
    return node;
  }

  private static void estimate(ObjectNode node, String name, Estimate estimate) {
    if (estimate instanceof Estimate.Known known) {
      ObjectNode interval = node.putObject(name);
      interval.put("value", Rounded.of(known.value(), known));
      interval.put("low", Rounded.of(known.low(), known));
      interval.put("high", Rounded.of(known.high(), known));
    } else if (estimate instanceof Estimate.Unknown unknown) {
      node.putNull(name);
      node.put(name + "_note", unknown.reason());
    }
  }

  private static void number(ObjectNode node, String name, OptionalDouble value) {
    if (value.isPresent()) {
      node.put(name, Rounded.of(value.getAsDouble()));
    } else {
      node.putNull(name);
      node.put(name + "_note", Words.english().say("result.not-logged"));
    }
  }

  private static void sentences(ArrayNode node, List<String> sentences) {
    sentences.forEach(node::add);
  }
}
