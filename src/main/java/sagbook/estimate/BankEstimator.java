package sagbook.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.capacity.CapacityResult;
import sagbook.estimate.capacity.CellCharge;
import sagbook.estimate.drain.FallingBehind;
import sagbook.estimate.resistance.CellResistance;
import sagbook.estimate.resistance.ResistanceEstimator;
import sagbook.estimate.resistance.ResistanceResult;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.estimate.temperature.TemperatureWatch;
import sagbook.evidence.Evidence;
import sagbook.model.CapacitySource;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.wording.Words;

/** Runs the estimators over a bank's evidence, each on what the ones before it found. */
public final class BankEstimator {
  private static final Words WORDS = Words.english();

  /** An interval this wide is what was held likely beforehand, not what the log told, kJ/mol. */
  private static final double HARDLY_FITTED_KILOJOULE = 7;

  /** A zero that is off by less would be said as 0.00 A. */
  private static final double SMALLEST_SAID_A = 0.005;

  private BankEstimator() {}

  /** Estimates everything about one bank. */
  public static BankEstimates estimate(Evidence evidence, PackDescription pack) {
    List<ReducedWindow> windows = ReducedWindow.of(evidence);
    double[] all = new double[windows.size()];
    Arrays.fill(all, 1);
    Optional<StringResponse> response = StringResponse.of(evidence.basis(), windows, all);
    // Thermometers are judged by themselves, while the charge is being told.
    CompletableFuture<List<TemperatureFault>> thermometers =
        CompletableFuture.supplyAsync(
            () -> TemperatureWatch.of(evidence.thinned(), evidence.temperatureStuckHours()));
    boolean counted = evidence.channels().hasCurrent();
    StringCharge string =
        counted
            ? StringCharge.counted(evidence, pack, response)
            : StringCharge.observed(evidence, pack);
    CapacityResult capacity = string.capacity();
    List<TemperatureFault> temperature = thermometers.join();
    boolean[] trusted = new boolean[temperature.size()];
    for (int c = 0; c < trusted.length; c++) {
      trusted[c] = !(temperature.get(c) instanceof TemperatureFault.Seen);
    }
    double[] offset =
        capacity.cells().stream()
            .mapToDouble(cell -> cell.offsetPercent().find().orElse(0) / 100)
            .toArray();
    ResistanceResult resistance =
        new ResistanceEstimator(
                evidence,
                windows,
                pack.chemistry() == Chemistry.LFP,
                trusted,
                offset,
                string.axis().share(string.record(), capacity.fullAh(), capacity.spanAh()))
            .estimate();
    List<Estimate> drains =
        counted
            ? capacity.cells().stream().map(CellCharge::selfDischargeMilliamp).toList()
            : FallingBehind.of(string.record(), pack, string.slowOhm(), evidence.stress().bledAh());
    return assemble(
        evidence,
        pack,
        capacity,
        drains,
        resistance,
        temperature,
        remarks(pack, string, counted, resistance));
  }

  private static List<String> remarks(
      PackDescription pack, StringCharge string, boolean counted, ResistanceResult resistance) {
    List<String> remarks = new ArrayList<>();
    ChargeAxis axis = string.axis();
    if (pack.openCircuit().isPresent()) {
      remarks.add(WORDS.say("remark.table"));
    }
    if (!pack.isCapacityTold()) {
      String key =
          !counted
              ? "remark.capacity.shares"
              : pack.capacitySource() == CapacitySource.FOUND
                  ? "remark.capacity.found"
                  : "remark.capacity.unknown";
      remarks.add(WORDS.say(key, Words.fixed(pack.nominalCapacityAh(), 0)));
    }
    if (!counted) {
      remarks.add(WORDS.say("remark.no-current"));
    } else if (axis.fullCharges() > 1 && Math.abs(axis.offsetA()) >= SMALLEST_SAID_A) {
      remarks.add(
          WORDS.say(
              "remark.zero", Words.fixed(axis.offsetA(), 2), Integer.toString(axis.fullCharges())));
    }
    if (counted && !string.record().hasBleed()) {
      remarks.add(WORDS.say("remark.no-bleed"));
    }
    if (resistance.activationEnergyKilojoulePerMole() instanceof Estimate.Known k) {
      remarks.add(
          WORDS.say(
              k.halfWidth() < HARDLY_FITTED_KILOJOULE
                  ? "remark.energy.fitted"
                  : "remark.energy.usual",
              Words.fixed(k.value(), 0),
              Words.fixed(k.low(), 0),
              Words.fixed(k.high(), 0)));
    }
    return remarks;
  }

  private static BankEstimates assemble(
      Evidence evidence,
      PackDescription pack,
      CapacityResult capacity,
      List<Estimate> drains,
      ResistanceResult resistance,
      List<TemperatureFault> temperature,
      List<String> remarks) {
    List<CellEstimates> cells = new ArrayList<>();
    for (int c = 0; c < evidence.channels().seriesCells(); c++) {
      CellCharge charge = capacity.cells().get(c);
      CellResistance r = resistance.cells().get(c);
      cells.add(
          new CellEstimates(
              c + 1,
              charge.capacityAh(),
              charge.relative(),
              r.milliohm(),
              r.relative(),
              r.ohmicExcessMilliohm(),
              r.slowRelative(),
              charge.offsetPercent(),
              drains.get(c),
              charge.voltageOffsetMillivolt(),
              temperature.get(c),
              r.change()));
    }
    UsableCharge usable =
        UsableCharge.of(cells, capacity.medianCapacityAh(), pack.nominalCapacityAh());
    return new BankEstimates(
        resistance.pulseS(),
        resistance.activationEnergyKilojoulePerMole(),
        capacity.medianCapacityAh(),
        usable.nowAh(),
        usable.balancedAh(),
        usable.gainAh(),
        cells,
        remarks);
  }
}
