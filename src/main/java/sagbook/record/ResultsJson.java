package sagbook.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Estimate;
import sagbook.verdict.Advice;
import sagbook.verdict.CellVerdict;
import sagbook.verdict.Checklist;
import sagbook.verdict.Severity;
import sagbook.verdict.TestPlan;
import sagbook.wording.Words;

/**
 * results.json: the contract that scripts read, described field by field in {@code
 * results.schema.json}. Keys keep their order, numbers their digits, lines end with a line feed:
 * the same result gives the same bytes.
 */
public final class ResultsJson {
  private static final Words WORDS = Words.english();
  private static final int SCHEMA_VERSION = 1;
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private ResultsJson() {}

  /** The whole file, ending with a line feed. */
  public static String text(CheckResult result) {
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(lines);
    printer.indentArraysWith(lines);
    try {
      return MAPPER.writer(printer).writeValueAsString(tree(result)) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of plain nodes has always a text", e);
    }
  }

  /** The word for a severity, the same in every file. */
  public static String words(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static ObjectNode tree(CheckResult result) {
    ObjectNode root = NODES.objectNode();
    root.put("schema_version", SCHEMA_VERSION);
    root.put("software", "sagbook " + result.softwareVersion());
    root.put("pack", result.pack().name());
    root.put("timezone", result.pack().timezone().getId());
    root.put("nominal_capacity_ah", Rounded.of(result.pack().nominalCapacityAh()));
    root.put("severity", words(result.severity()));
    ArrayNode inputs = root.putArray("inputs");
    for (InputFile input : result.inputs()) {
      inputs.add(input(input));
    }
    ArrayNode banks = root.putArray("banks");
    for (BankResult bank : result.banks()) {
      banks.add(bank(bank, result));
    }
    return root;
  }

  private static ObjectNode input(InputFile input) {
    ObjectNode node = NODES.objectNode();
    node.put("file", input.file());
    node.put("sha256", input.sha256());
    node.put("rows", input.rows());
    node.put("first", input.first().toString());
    node.put("last", input.last().toString());
    return node;
  }

  private static ObjectNode bank(BankResult bank, CheckResult result) {
    ObjectNode node = NODES.objectNode();
    node.put("bank", bank.bank());
    node.put("chemistry", bank.chemistry().key());
    node.put("series_cells", bank.seriesCells());
    node.put("from", bank.from().toString());
    node.put("to", bank.to().toString());
    node.put("headline", bank.verdict().headline());
    node.put("severity", words(bank.verdict().severity()));
    Advice first = bank.verdict().advice();
    ObjectNode decision = decision(node.putObject("decision"), first);
    decision.put("sentence", first.sentence());
    sentences(decision.putArray("because"), first.why());
    sentences(node.putArray("todo"), bank.verdict().todo());
    sentences(node.putArray("next_month"), bank.verdict().nextMonth());
    plan(node.putObject("test_plan"), bank.plan());
    ArrayNode lists = node.putArray("checklists");
    for (Checklist list : Checklist.of(bank.verdict())) {
      ObjectNode one = lists.addObject();
      one.put("action", list.action().words());
      sentences(one.putArray("points"), list.points());
    }
    node.put("rows", bank.evidence().rows());
    number(node, "cell_empty_v", result.pack().limits().cellEmptyVoltage());
    number(node, "cadence_s", bank.evidence().cadenceS());
    for (BankFigure.Counted counted : BankFigure.Counted.values()) {
      number(node, counted.key(), counted.of(bank));
    }
    number(node, "resistance_pulse_s", bank.estimates().resistancePulseS());
    for (BankFigure.Estimated estimated : BankFigure.Estimated.values()) {
      estimate(node, estimated.key(), estimated.of(bank));
    }
    AccountJson.put(node, bank.account());
    WhatIfJson.put(node, bank.prospect());
    sentences(node.putArray("remarks"), bank.estimates().remarks());
    sentences(node.putArray("reading"), bank.reading());
    ArrayNode cells = node.putArray("cells");
    for (CellVerdict cell : bank.verdict().cells()) {
      cells.add(cell(bank, cell));
    }
    return node;
  }

  private static ObjectNode cell(BankResult bank, CellVerdict cell) {
    ObjectNode node = NODES.objectNode();
    node.put("cell", cell.cell());
    node.put("rank", cell.rank());
    cell.tiedWith().forEach(node.putArray("tied_with")::add);
    node.put("finding", cell.finding().words());
    node.put("action", cell.action());
    sentences(node.putArray("evidence"), cell.evidence());
    decision(node.putObject("decision"), cell.advice());
    for (Quantity quantity : Quantity.values()) {
      estimate(node, quantity.key(), quantity.of(cell));
      if (quantity == Quantity.RESISTANCE_MOHM) {
        number(node, "resistance_pulse_s", bank.estimates().resistancePulseS());
      }
    }
    temperatureFault(node, cell.estimates().temperatureFault());
    for (CellReading reading : CellReading.values()) {
      number(node, reading.key(), reading.of(bank.evidence().stress(), cell.cell()));
    }
    return node;
  }

  private static ObjectNode decision(ObjectNode node, Advice advice) {
    node.put("action", advice.action().words());
    advice.cells().forEach(node.putArray("cells")::add);
    node.put("would_change_the_mind", advice.mindChanger());
    node.put("next_observation", advice.nextObservation());
    return node;
  }

  private static void plan(ObjectNode node, TestPlan plan) {
    node.put("cell", plan.cell());
    node.put("why", plan.why());
    ArrayNode steps = node.putArray("steps");
    for (TestPlan.Step step : plan.steps()) {
      ObjectNode one = steps.addObject();
      one.put("quantity", step.quantity());
      one.put("doing", step.doing());
      value(one, "half_width_percent", step.halfWidthPercent());
      value(one, "predicted_half_width_percent", step.predictedPercent());
    }
  }

  private static void value(ObjectNode node, String name, Estimate estimate) {
    if (estimate instanceof Estimate.Unknown unknown) {
      node.putNull(name);
      node.put(name + "_note", unknown.reason());
    } else {
      number(node, name, estimate.find().orElse(Double.NaN));
    }
  }

  private static void temperatureFault(ObjectNode node, TemperatureFault fault) {
    if (fault instanceof TemperatureFault.Seen seen) {
      node.put("temperature_fault", seen.words());
      return;
    }
    node.putNull("temperature_fault");
    node.put(
        "temperature_fault_note",
        fault instanceof TemperatureFault.None
            ? WORDS.say("result.thermometer-well")
            : WORDS.say("result.thermometer-not-logged"));
  }

  static void estimate(ObjectNode node, String name, Estimate estimate) {
    if (estimate instanceof Estimate.Known known) {
      ObjectNode interval = node.putObject(name);
      interval.put("value", Rounded.of(known.value(), known));
      interval.put("low", Rounded.of(known.low(), known));
      if (known.isOpen()) {
        interval.putNull("high");
        node.put(name + "_note", WORDS.say("result.at-least"));
      } else {
        interval.put("high", Rounded.of(known.high(), known));
      }
    } else if (estimate instanceof Estimate.Unknown unknown) {
      node.putNull(name);
      node.put(name + "_note", unknown.reason());
    }
  }

  static void number(ObjectNode node, String name, double value) {
    if (Double.isFinite(value)) {
      node.put(name, Rounded.of(value));
    } else {
      node.putNull(name);
      node.put(name + "_note", WORDS.say("result.not-logged"));
    }
  }

  private static void sentences(ArrayNode node, List<String> sentences) {
    sentences.forEach(node::add);
  }
}
