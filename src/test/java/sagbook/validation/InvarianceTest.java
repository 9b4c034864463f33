package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.BankEstimator;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.EvidenceCollector;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.model.SampleBlock;
import sagbook.pipeline.Check;
import sagbook.record.BankResult;
import sagbook.simulate.Fault;
import sagbook.simulate.PackPlan;
import sagbook.simulate.Scenario;
import sagbook.simulate.Scenarios;
import sagbook.simulate.SimulatedLogs;

/** What must not change a result, whatever the result is: a week of an invented string of six. */
class InvarianceTest {
  private static final int CELLS = 6;
  private static final double NOMINAL_AH = 280;
  private static final List<Function<CellEstimates, Estimate>> RATIOS =
      List.of(
          CellEstimates::capacityRelative,
          CellEstimates::resistanceRelative,
          CellEstimates::slowResponseRelative,
          CellEstimates::chargeOffsetPercent);

  private static SampleBlock log = new SampleBlock(new Channels(CELLS, true, true, true), 0);
  private static BankEstimates plain;

  /** The same through a file, which comes in blocks. */
  private static BankEstimates plainlyRead;

  @TempDir private static Path temp;

  @BeforeAll
  static void simulate() throws IOException, InputProblem {
    Scenario scenario =
        Scenarios.find("healthy")
            .orElseThrow()
            .withPack(PackPlan.lfp(CELLS, NOMINAL_AH))
            .withFaults(
                List.of(new Fault.LithiumLoss(2, 9, 0, 0), new Fault.HighResistance(5, 60, 0, 0)))
            .withTime(LocalDate.of(2026, 6, 1), 7, 60);
    List<double[]> rows = new ArrayList<>();
    SimulatedLogs.feed(
        scenario,
        block -> {
          for (int r = 0; r < block.rows(); r++) {
            double[] row = new double[2 + 3 * CELLS];
            row[0] = block.timeS()[r];
            row[1] = block.currentA()[r];
            for (int c = 0; c < CELLS; c++) {
              row[2 + c] = block.voltageV()[c][r];
              row[2 + CELLS + c] = block.temperatureC()[c][r];
              row[2 + 2 * CELLS + c] = block.bleedFraction()[c][r];
            }
            rows.add(row);
          }
        });
    log = block(rows.size());
    for (int r = 0; r < rows.size(); r++) {
      double[] row = rows.get(r);
      log.timeS()[r] = row[0];
      log.currentA()[r] = row[1];
      for (int c = 0; c < CELLS; c++) {
        log.voltageV()[c][r] = row[2 + c];
        log.temperatureC()[c][r] = row[2 + CELLS + c];
        log.bleedFraction()[c][r] = row[2 + 2 * CELLS + c];
      }
    }
    plain = estimates(log, NOMINAL_AH);
    plainlyRead = read("current_a", 1, "v%d", 1, "temp%d_c", 1, 0);
  }

  private static SampleBlock block(int rows) {
    SampleBlock block = new SampleBlock(new Channels(CELLS, true, true, true), rows);
    block.setRows(rows);
    return block;
  }

  private static BankEstimates estimates(SampleBlock rows, double nominalAh) {
    PackDescription pack =
        PackDescription.of("same", Chemistry.LFP, CELLS, nominalAh, ZoneId.of("Etc/UTC"));
    EvidenceCollector collector =
        new EvidenceCollector(rows.channels(), pack.limits(), nominalAh, pack.bleedOhm());
    collector.accept(rows);
    return BankEstimator.estimate(collector.finish(), pack);
  }

  /** Without this the other tests would compare one unknown with another. */
  @Test
  void theLogTellsSomething() {
    for (CellEstimates cell : plain.cells()) {
      for (Function<CellEstimates, Estimate> ratio : RATIOS) {
        assertTrue(ratio.apply(cell) instanceof Estimate.Known, cell.toString());
      }
      assertTrue(cell.capacityAh() instanceof Estimate.Known, cell.toString());
      assertTrue(cell.resistanceMilliohm() instanceof Estimate.Known, cell.toString());
    }
  }

  /**
   * The same up to rounding: within a five-hundredth of the interval; where ampere are others, a
   * tenth, because what counts as a step or as noise is in volt and ampere.
   */
  private static void assertSame(
      Estimate expected, Estimate found, double factor, double ampere, String what) {
    if (expected instanceof Estimate.Known e && found instanceof Estimate.Known f) {
      double close = (ampere == 1 ? 0.002 : 0.1) * (e.high() - e.low()) * factor + 1e-9;
      assertEquals(factor * e.value(), f.value(), close, what);
      assertEquals(factor * e.low(), f.low(), close, what + ", low");
      assertEquals(factor * e.high(), f.high(), close, what + ", high");
    } else {
      assertEquals(expected, found, what);
    }
  }

  private static void assertSameCell(CellEstimates e, CellEstimates f, double ampere) {
    String what = "cell " + e.cell();
    for (Function<CellEstimates, Estimate> ratio : RATIOS) {
      assertSame(ratio.apply(e), ratio.apply(f), 1, ampere, what);
    }
    assertSameVoltageError(e, f, ampere, what);
    assertSame(e.capacityAh(), f.capacityAh(), ampere, ampere, what + " capacity");
    assertSame(
        e.selfDischargeMilliamp(), f.selfDischargeMilliamp(), ampere, ampere, what + " drain");
    assertSame(
        e.resistanceMilliohm(), f.resistanceMilliohm(), 1 / ampere, ampere, what + " resistance");
    assertSame(
        e.ohmicExcessMilliohm(), f.ohmicExcessMilliohm(), 1 / ampere, ampere, what + " excess");
  }

  /** What a voltage error is told by is not only a matter of shares: then intervals must meet. */
  private static void assertSameVoltageError(
      CellEstimates e, CellEstimates f, double ampere, String what) {
    Estimate.Known one = (Estimate.Known) e.voltageOffsetMillivolt();
    Estimate.Known two = (Estimate.Known) f.voltageOffsetMillivolt();
    if (ampere == 1) {
      assertSame(one, two, 1, 1, what);
    } else {
      assertTrue(one.low() <= two.high() && two.low() <= one.high(), one + " " + two);
    }
  }

  private static void assertSameBank(BankEstimates expected, BankEstimates found) {
    for (int c = 0; c < CELLS; c++) {
      assertSameCell(expected.cells().get(c), found.cells().get(c), 1);
    }
    assertSame(expected.stringUsableAh(), found.stringUsableAh(), 1, 1, "usable charge");
  }

  @Test
  void cellsInAnotherOrderGiveTheSameInThatOrder() {
    int[] from = {3, 5, 0, 4, 1, 2};
    SampleBlock other = block(log.rows());
    for (int r = 0; r < log.rows(); r++) {
      other.timeS()[r] = log.timeS()[r];
      other.currentA()[r] = log.currentA()[r];
      for (int c = 0; c < CELLS; c++) {
        other.voltageV()[c][r] = log.voltageV()[from[c]][r];
        other.temperatureC()[c][r] = log.temperatureC()[from[c]][r];
        other.bleedFraction()[c][r] = log.bleedFraction()[from[c]][r];
      }
    }
    BankEstimates found = estimates(other, NOMINAL_AH);
    for (int c = 0; c < CELLS; c++) {
      assertSameCell(plain.cells().get(from[c]), found.cells().get(c), 1);
    }
  }

  @Test
  void aStringTwiceAsLargeAtTwiceTheCurrentHasTwiceTheChargeAndHalfTheResistance() {
    SampleBlock other = copy(0, 2);
    for (int c = 0; c < CELLS; c++) {
      // A board would have to bleed twice the charge as well.
      for (int r = 0; r < log.rows(); r++) {
        other.bleedFraction()[c][r] = 2 * log.bleedFraction()[c][r];
      }
    }
    BankEstimates found = estimates(other, 2 * NOMINAL_AH);
    for (int c = 0; c < CELLS; c++) {
      assertSameCell(plain.cells().get(c), found.cells().get(c), 2);
    }
    assertSame(plain.stringUsableAh(), found.stringUsableAh(), 2, 2, "usable charge");
  }

  @Test
  void weeksLaterIsTheSame() {
    assertSameBank(plain, estimates(copy(5 * 7 * 86_400, 1), NOMINAL_AH));
  }

  private static SampleBlock copy(double laterS, double ampere) {
    SampleBlock other = block(log.rows());
    for (int r = 0; r < log.rows(); r++) {
      other.timeS()[r] = log.timeS()[r] + laterS;
      other.currentA()[r] = ampere * log.currentA()[r];
      for (int c = 0; c < CELLS; c++) {
        other.voltageV()[c][r] = log.voltageV()[c][r];
        other.temperatureC()[c][r] = log.temperatureC()[c][r];
        other.bleedFraction()[c][r] = log.bleedFraction()[c][r];
      }
    }
    return other;
  }

  @Test
  void currentCountedTheOtherWayIsFoundOutAndGivesTheSame() throws IOException, InputProblem {
    assertSameBank(plainlyRead, read("current_a", -1, "v%d", 1, "temp%d_c", 1, 0));
  }

  @Test
  void milliunitsGiveTheSame() throws IOException, InputProblem {
    assertSameBank(plainlyRead, read("current_ma", 1000, "v%d_mv", 1000, "temp%d_c", 1, 0));
  }

  @Test
  void fahrenheitGivesTheSame() throws IOException, InputProblem {
    assertSameBank(plainlyRead, read("current_a", 1, "v%d", 1, "temp%d_f", 1.8, 32));
  }

  @Test
  void kelvinGivesTheSame() throws IOException, InputProblem {
    assertSameBank(plainlyRead, read("current_a", 1, "v%d", 1, "temp%d_k", 1, 273.15));
  }

  /** Writes the log with these names and factors and reads it back. */
  private static BankEstimates read(
      String current,
      double ampere,
      String voltage,
      double volt,
      String temperature,
      double celsius,
      double zero)
      throws IOException, InputProblem {
    StringBuilder text = new StringBuilder("time," + current);
    for (String name : List.of(voltage, temperature, "bleed%d_percent")) {
      for (int c = 1; c <= CELLS; c++) {
        text.append(',').append(name.replace("%d", Integer.toString(c)));
      }
    }
    text.append('\n');
    for (int r = 0; r < log.rows(); r++) {
      text.append((long) log.timeS()[r]).append(',').append(rounded(ampere * log.currentA()[r]));
      for (int c = 0; c < CELLS; c++) {
        text.append(',').append(rounded(volt * log.voltageV()[c][r]));
      }
      for (int c = 0; c < CELLS; c++) {
        text.append(',').append(rounded(celsius * log.temperatureC()[c][r] + zero));
      }
      for (int c = 0; c < CELLS; c++) {
        text.append(',').append(rounded(100 * log.bleedFraction()[c][r]));
      }
      text.append('\n');
    }
    Path file = temp.resolve("log.csv");
    Files.writeString(file, text);
    PackDescription pack =
        PackDescription.of("same", Chemistry.LFP, CELLS, NOMINAL_AH, ZoneId.of("Etc/UTC"));
    ReadRequest request =
        new ReadRequest(
            pack, List.of(file.toString()), Optional.empty(), Optional.empty(), Optional.empty());
    BankResult bank = Check.run(request, "test", words -> {}).banks().get(0);
    return bank.estimates();
  }

  private static double rounded(double value) {
    return Math.rint(1e4 * value) / 1e4;
  }
}
