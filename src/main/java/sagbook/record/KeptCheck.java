package sagbook.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/**
 * What results.json keeps of an earlier check, as far as a season's overview needs it.
 *
 * @param pack the battery's name
 * @param zone in which its times are shown
 * @param severity most urgent of the banks'
 * @param banks one a bank
 */
public record KeptCheck(String pack, ZoneId zone, Severity severity, List<Bank> banks) {
  private static final Words WORDS = Words.english();
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * A bank of an earlier check.
   *
   * @param bank its name
   * @param from first sample
   * @param to last sample
   * @param headline its one sentence
   * @param severity how soon somebody had to do something
   * @param cells one a cell, cell 1 first
   */
  public record Bank(
      String bank, Instant from, Instant to, String headline, Severity severity, List<Cell> cells) {
    public Bank {
      cells = List.copyOf(cells);
    }
  }

  /**
   * A cell of an earlier check.
   *
   * @param cell its place
   * @param rank 1 for the weakest
   * @param finding the cause
   * @param estimates by quantity; one that is not kept is unknown
   */
  public record Cell(int cell, int rank, Finding finding, Map<Quantity, Estimate> estimates) {
    public Cell {
      estimates = Map.copyOf(estimates);
    }

    public Estimate estimate(Quantity quantity) {
      return estimates.getOrDefault(quantity, Estimate.unknown(WORDS.say("unknown.not-kept")));
    }
  }

  public KeptCheck {
    banks = List.copyOf(banks);
  }

  /** First sample of all banks. */
  public Instant from() {
    return banks.stream().map(Bank::from).min(Instant::compareTo).orElseThrow();
  }

  /** Last sample of all banks. */
  public Instant to() {
    return banks.stream().map(Bank::to).max(Instant::compareTo).orElseThrow();
  }

  /** The bank of that name, if this check had it. */
  public Optional<Bank> find(String bank) {
    return banks.stream().filter(b -> b.bank().equals(bank)).findFirst();
  }

  /**
   * Reads the text of a results.json.
   *
   * @throws IllegalArgumentException when it is not one, saying what is wrong
   */
  public static KeptCheck parse(String text) {
    JsonNode root;
    try {
      root = MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(WORDS.say("problem.results.json"), e);
    }
    if (root.path("schema_version").asInt() != 1 || root.path("banks").isEmpty()) {
      throw new IllegalArgumentException(WORDS.say("problem.results.version"));
    }
    List<Bank> banks = new ArrayList<>();
    for (JsonNode bank : root.path("banks")) {
      banks.add(bank(bank));
    }
    return new KeptCheck(text(root, "pack"), zone(root), severity(root), banks);
  }

  private static Bank bank(JsonNode node) {
    List<Cell> cells = new ArrayList<>();
    for (JsonNode cell : node.path("cells")) {
      cells.add(cell(cell));
    }
    return new Bank(
        text(node, "bank"),
        time(node, "from"),
        time(node, "to"),
        text(node, "headline"),
        severity(node),
        cells);
  }

  private static Cell cell(JsonNode node) {
    Map<Quantity, Estimate> estimates = new EnumMap<>(Quantity.class);
    for (Quantity quantity : Quantity.values()) {
      estimates.put(quantity, estimate(node, quantity.key()));
    }
    String words = text(node, "finding");
    for (Finding finding : Finding.values()) {
      if (finding.words().equals(words)) {
        return new Cell(node.path("cell").asInt(), node.path("rank").asInt(), finding, estimates);
      }
    }
    throw new IllegalArgumentException(WORDS.say("problem.results.unknown", "finding"));
  }

  static Estimate estimate(JsonNode node, String key) {
    JsonNode interval = node.path(key);
    if (!interval.isObject()) {
      String note = node.path(key + "_note").asText();
      return Estimate.unknown(note.isBlank() ? WORDS.say("unknown.not-kept") : note);
    }
    return new Estimate.Known(
        interval.path("value").asDouble(Double.NaN),
        interval.path("low").asDouble(Double.NaN),
        interval.path("high").isNull()
            ? Double.POSITIVE_INFINITY
            : interval.path("high").asDouble(Double.NaN));
  }

  /** What stands beside an estimate's numbers: why there are none, or why one end is open. */
  public static String note(Estimate estimate) {
    if (estimate instanceof Estimate.Unknown unknown) {
      return unknown.reason();
    }
    return ((Estimate.Known) estimate).isOpen() ? WORDS.say("result.at-least") : "";
  }

  private static Severity severity(JsonNode node) {
    String words = text(node, "severity");
    for (Severity severity : Severity.values()) {
      if (ResultsJson.words(severity).equals(words)) {
        return severity;
      }
    }
    throw new IllegalArgumentException(WORDS.say("problem.results.unknown", "severity"));
  }

  private static ZoneId zone(JsonNode node) {
    try {
      return ZoneId.of(text(node, "timezone"));
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(WORDS.say("problem.results.unknown", "timezone"), e);
    }
  }

  private static Instant time(JsonNode node, String key) {
    try {
      return Instant.parse(text(node, key));
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(WORDS.say("problem.results.time", key), e);
    }
  }

  private static String text(JsonNode node, String key) {
    JsonNode value = node.path(key);
    if (!value.isTextual()) {
      throw new IllegalArgumentException(WORDS.say("problem.results.missing", key));
    }
    return value.asText();
  }
}
