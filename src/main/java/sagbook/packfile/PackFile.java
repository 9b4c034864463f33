package sagbook.packfile;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sagbook.issue.InputProblem;
import sagbook.model.BankDescription;
import sagbook.model.CapacitySource;
import sagbook.model.Chemistry;
import sagbook.model.CurrentSign;
import sagbook.model.Limits;
import sagbook.model.PackDescription;
import sagbook.model.Threshold;
import sagbook.wording.Words;

/**
 * Reads the pack description.
 *
 * <pre>
 * [pack]
 * name = "House battery"       # needed: heads the report
 * chemistry = "lfp"            # needed: lfp, nmc, nca or lco
 * series_cells = 16            # needed: 2 to 32
 * nominal_capacity_ah = 280    # distances along the charge axis are reckoned in shares of
 *                              # it, so give it; else the string's own size, where that shows
 * timezone = "Europe/Lisbon"   # default Etc/UTC: the one zone without a surprise; for clocks
 *                              # without offset
 * bleed_resistor_ohm = 3.3     # default 3.3, where bleeding is logged
 * current_sign = "charge positive"  # or "discharge positive"; default: found from the logs
 *
 * [limits]                     # defaults by chemistry, see {@link Limits}
 * cell_full_v, cell_empty_v, cell_max_v, cell_min_v,
 * charge_min_c, charge_max_c, charge_cool_c, discharge_min_c, discharge_max_c
 *
 * [rules]                      # when a difference is worth acting on, see {@link Threshold}
 * capacity_percent, resistance_percent, ...
 *
 * [spare]                      # what a replacement would be; defaults: nominal, string's median
 * capacity_ah, resistance_mohm
 *
 * [cell]                       # the cells' own open-circuit curve; default: published ones
 * charge_fraction = [0, 0.02, ..., 1]   # rising, 10 or more
 * open_circuit_v = [2.5, 2.8, ..., 3.65]  # rest voltage at each, never falling; has to reach from
 *                              # cell_empty_v to cell_full_v
 *
 * [[bank]]                     # one a parallel string; default: one bank called "main"
 * name = "left"
 * files = ["left-*.csv"]
 *
 * [[log]]                      # column mapping, see {@link MappingFile}
 * </pre>
 */
public final class PackFile {
  private static final Words WORDS = Words.english();
  private static final String WHAT = WORDS.say("problem.toml.pack");
  private static final double DEFAULT_CAPACITY_AH = 100;
  private static final ZoneId DEFAULT_ZONE = ZoneId.of("Etc/UTC");

  private PackFile() {}

  public static PackDescription read(Path file) throws InputProblem {
    return from(TomlDocument.read(file, WHAT));
  }

  /** Reads a description from text; {@code name} is what complaints call it. */
  public static PackDescription parse(String name, String text) throws InputProblem {
    return from(TomlDocument.parse(name, text, WHAT));
  }

  private static PackDescription from(TomlDocument document) throws InputProblem {
    TomlTable root = document.root();
    root.allowOnly("pack", "limits", "rules", "spare", "cell", "bank", "log");
    Optional<TomlTable> given = root.table("pack");
    if (given.isEmpty()) {
      throw root.missing("[pack]", WORDS.say("problem.key.pack"));
    }
    TomlTable pack = given.get();
    pack.allowOnly(
        "name",
        "chemistry",
        "series_cells",
        "nominal_capacity_ah",
        "timezone",
        "bleed_resistor_ohm",
        "current_sign");
    String name = pack.neededText("name", "name = \"House battery\"");
    Chemistry chemistry = chemistry(pack);
    Optional<Integer> cells = pack.whole("series_cells", 2, 32);
    if (cells.isEmpty()) {
      throw pack.missing("series_cells", "series_cells = 16");
    }
    Spare spare = spare(root);
    Limits limits = limits(root, chemistry);
    return new PackDescription(
        name,
        chemistry,
        cells.get(),
        pack.number("nominal_capacity_ah", 0.01, 99_999).orElse(DEFAULT_CAPACITY_AH),
        pack.has("nominal_capacity_ah") ? CapacitySource.TOLD : CapacitySource.ASSUMED,
        zone(pack),
        pack.number("bleed_resistor_ohm", 0.01, 10_000),
        sign(pack),
        limits,
        rules(root),
        spare.capacityAh(),
        spare.resistanceMilliohm(),
        CurveTable.read(root, limits),
        banks(root),
        MappingFile.mappings(root));
  }

  private static Chemistry chemistry(TomlTable pack) throws InputProblem {
    String key = pack.neededText("chemistry", "chemistry = \"lfp\"");
    Optional<Chemistry> found = Chemistry.find(key);
    if (found.isEmpty()) {
      List<String> known = new ArrayList<>();
      for (Chemistry each : Chemistry.values()) {
        known.add("\"" + each.key() + "\"");
      }
      throw pack.complaint("chemistry", String.join(WORDS.say("list.either"), known));
    }
    return found.get();
  }

  private static ZoneId zone(TomlTable pack) throws InputProblem {
    Optional<String> text = pack.text("timezone");
    if (text.isEmpty()) {
      return DEFAULT_ZONE;
    }
    try {
      return ZoneId.of(text.get());
    } catch (DateTimeException e) {
      throw pack.complaint("timezone", WORDS.say("problem.expected.zone"));
    }
  }

  private static Optional<CurrentSign> sign(TomlTable pack) throws InputProblem {
    Optional<String> text = pack.text("current_sign");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    for (CurrentSign sign : CurrentSign.values()) {
      if (sign.words().equals(text.get())) {
        return Optional.of(sign);
      }
    }
    throw pack.complaint("current_sign", WORDS.say("problem.expected.sign"));
  }

  private static Limits limits(TomlTable root, Chemistry chemistry) throws InputProblem {
    Limits base = Limits.of(chemistry);
    Optional<TomlTable> given = root.table("limits");
    if (given.isEmpty()) {
      return base;
    }
    TomlTable table = given.get();
    table.allowOnly(
        "cell_full_v",
        "cell_empty_v",
        "cell_max_v",
        "cell_min_v",
        "charge_min_c",
        "charge_max_c",
        "charge_cool_c",
        "discharge_min_c",
        "discharge_max_c");
    double full = table.number("cell_full_v", 0.5, 6).orElse(base.cellFullVoltage());
    double empty = table.number("cell_empty_v", 0.5, 6).orElse(base.cellEmptyVoltage());
    double most = table.number("cell_max_v", 0.5, 6).orElse(Math.max(full, base.cellMaxVoltage()));
    double least =
        table.number("cell_min_v", 0.5, 6).orElse(Math.min(empty, base.cellMinVoltage()));
    double chargeMin = temperature(table, "charge_min_c", base.chargeMinTemperatureC());
    double chargeMax = temperature(table, "charge_max_c", base.chargeMaxTemperatureC());
    double cool =
        temperature(
            table,
            "charge_cool_c",
            Math.min(chargeMax, Math.max(chargeMin, base.chargeCoolTemperatureC())));
    double dischargeMin = temperature(table, "discharge_min_c", base.dischargeMinTemperatureC());
    double dischargeMax = temperature(table, "discharge_max_c", base.dischargeMaxTemperatureC());
    try {
      return new Limits(
          full, empty, most, least, chargeMin, chargeMax, cool, dischargeMin, dischargeMax);
    } catch (IllegalArgumentException e) {
      throw root.complaint("limits", WORDS.say("problem.expected.limits"));
    }
  }

  private static Map<Threshold, Double> rules(TomlTable root) throws InputProblem {
    Map<Threshold, Double> told = new EnumMap<>(Threshold.class);
    Optional<TomlTable> given = root.table("rules");
    if (given.isEmpty()) {
      return told;
    }
    TomlTable table = given.get();
    table.allowOnly(Arrays.stream(Threshold.values()).map(Threshold::key).toArray(String[]::new));
    for (Threshold threshold : Threshold.values()) {
      table
          .number(threshold.key(), threshold.least(), threshold.most())
          .ifPresent(value -> told.put(threshold, value));
    }
    ordered(table, told, Threshold.CAPACITY, Threshold.REPLACE_CAPACITY);
    ordered(table, told, Threshold.RESISTANCE, Threshold.REPLACE_RESISTANCE);
    ordered(table, told, Threshold.DRAIN, Threshold.DRAIN_STOP);
    return told;
  }

  private static void ordered(
      TomlTable table, Map<Threshold, Double> told, Threshold lower, Threshold upper)
      throws InputProblem {
    double low = told.getOrDefault(lower, lower.usual());
    double high = told.getOrDefault(upper, upper.usual());
    if (!(low <= high)) {
      Threshold wrong = told.containsKey(upper) ? upper : lower;
      throw table.complaint(
          wrong.key(),
          WORDS.say(
              "problem.expected.order",
              lower.key(),
              Double.toString(low),
              upper.key(),
              Double.toString(high)));
    }
  }

  private static double temperature(TomlTable table, String key, double otherwise)
      throws InputProblem {
    return table.number(key, -60, 120).orElse(otherwise);
  }

  private record Spare(Optional<Double> capacityAh, Optional<Double> resistanceMilliohm) {}

  private static Spare spare(TomlTable root) throws InputProblem {
    Optional<TomlTable> given = root.table("spare");
    if (given.isEmpty()) {
      return new Spare(Optional.empty(), Optional.empty());
    }
    given.get().allowOnly("capacity_ah", "resistance_mohm");
    return new Spare(
        given.get().number("capacity_ah", 0.01, 99_999),
        given.get().number("resistance_mohm", 0.001, 1_000));
  }

  private static List<BankDescription> banks(TomlTable root) throws InputProblem {
    List<BankDescription> banks = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (TomlTable bank : root.tables("bank")) {
      bank.allowOnly("name", "files");
      String name = bank.neededText("name", "name = \"left\"");
      if (!names.add(name)) {
        throw bank.complaint("name", WORDS.say("problem.expected.other-name"));
      }
      List<String> files = bank.texts("files");
      if (files.isEmpty()) {
        throw bank.missing("files", "files = [\"" + name + "-*.csv\"]");
      }
      banks.add(new BankDescription(name, files));
    }
    return banks;
  }
}
