package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Check;
import sagbook.record.BankResult;
import sagbook.verdict.CellVerdict;

/**
 * Cells whose open-circuit curve is a measured one (lfp_ocv_tables: cells by three makers and the
 * table of M. Naumann, doctoral thesis, TU Munich 2018), and none of the published functions: the
 * string has to be judged by what its own log shows.
 */
class MeasuredCurveTest {
  private static final double[] RESISTANCE = {1, 1.02, 0.98, 1, 1.01, 1.35, 0.99, 1};
  private static final int WORN = 4;
  private static final int LOW = 5;
  private static final int RESISTIVE = 6;
  private static final int DAYS = 14;

  @TempDir private Path temp;

  /** A string with some of its cells at fault, and what Sagbook makes of it. */
  private record Judged(MeasuredString string, BankEstimates estimates, List<CellVerdict> cells) {
    double relativeCapacity(int cell) {
      return string.capacityAh()[cell - 1] / Robust.median(string.capacityAh());
    }
  }

  private Judged judged(Chemistry chemistry, String table, double missingAh, String more)
      throws IOException, InputProblem {
    return judged(chemistry, table, 252, missingAh, more);
  }

  private Judged judged(
      Chemistry chemistry, String table, double wornAh, double missingAh, String more)
      throws IOException, InputProblem {
    boolean flat = chemistry == Chemistry.LFP;
    double[] capacityAh = {282, 279, 280, wornAh, 281, 278.5, 281.5, 279.5};
    double[] missing = {0, 1, 0.5, 0, missingAh, 1, 0.3, 0.8};
    MeasuredString string =
        new MeasuredString(
            MeasuredString.table("lfp_ocv_tables", table),
            flat ? 0.011 : 0.004,
            capacityAh,
            missing,
            RESISTANCE,
            flat ? 3.45 : 4.16,
            flat ? 2.9 : 3.2);
    PackDescription pack = PackFile.parse("pack.toml", description(chemistry) + more);
    Path log = temp.resolve("log.csv");
    Files.writeString(log, string.log(DAYS));
    ReadRequest request =
        new ReadRequest(
            pack, List.of(log.toString()), Optional.empty(), Optional.empty(), Optional.empty());
    BankResult bank = Check.run(request, "test", words -> {}).banks().get(0);
    return new Judged(string, bank.estimates(), bank.verdict().cells());
  }

  private static String description(Chemistry chemistry) {
    return """
    [pack]
    name = "measured"
    chemistry = "%s"
    series_cells = 8
    nominal_capacity_ah = %s
    """
        .formatted(chemistry.key(), MeasuredString.NOMINAL_AH);
  }

  private static void assertFinding(Judged judged, int cell, Finding otherwise) {
    Finding expected = cell == RESISTIVE ? Finding.HIGH_RESISTANCE : otherwise;
    assertEquals(expected, judged.cells().get(cell - 1).finding(), "cell " + cell);
  }

  private static void assertHolds(double truth, Estimate estimate, double tolerance, String what) {
    Estimate.Known known = (Estimate.Known) estimate;
    assertEquals(truth, known.value(), tolerance, what);
    assertTrue(known.low() <= truth && truth <= known.high(), what + " " + known);
  }

  /** At 25 °C and the stated pulse time: 2 % and inside its interval, every cell. */
  private static void assertResistances(Judged judged) {
    double usual = MeasuredString.milliohm(judged.estimates().resistancePulseS());
    for (CellVerdict cell : judged.cells()) {
      double truth = usual * RESISTANCE[cell.cell() - 1];
      Estimate found = cell.estimates().resistanceMilliohm();
      assertHolds(truth, found, 0.02 * truth, "cell " + cell.cell());
    }
  }

  /** A cell that lost more than a quarter, which a voltage of 80 mV too much nearly explains. */
  @ParameterizedTest
  @CsvSource({
    "NMC, LG-INR21700M50T_C32_pseudo_ocv.csv",
    "NCA, Molicel-INR21700P42A_C32_pseudo_ocv.csv"
  })
  void onASlopingCurveAFarWornCellIsNotTakenForAWrongReading(Chemistry chemistry, String table)
      throws IOException, InputProblem {
    Judged judged = judged(chemistry, table, 200, 0, "");
    CellVerdict worn = judged.cells().get(WORN - 1);
    assertEquals(Finding.LOW_CAPACITY, worn.finding());
    Estimate.Known known = (Estimate.Known) worn.estimates().capacityRelative();
    double truth = judged.relativeCapacity(WORN);
    assertTrue(known.low() <= truth && truth <= known.high(), known.toString());
  }

  @ParameterizedTest
  @CsvSource({
    "NMC, LG-INR21700M50T_C32_pseudo_ocv.csv",
    "NCA, Molicel-INR21700P42A_C32_pseudo_ocv.csv"
  })
  void onASlopingCurveEveryFaultIsNamedAndMeasured(Chemistry chemistry, String table)
      throws IOException, InputProblem {
    Judged judged = judged(chemistry, table, 14, "");
    for (int cell = 1; cell <= 8; cell++) {
      Finding otherwise =
          cell == WORN
              ? Finding.LOW_CAPACITY
              : cell == LOW ? Finding.OUT_OF_BALANCE : Finding.HEALTHY;
      assertFinding(judged, cell, otherwise);
      CellEstimates estimates = judged.cells().get(cell - 1).estimates();
      double truth = judged.relativeCapacity(cell);
      assertHolds(truth, estimates.capacityRelative(), 0.005, "cell " + cell);
    }
    // The fullest and the median cell stand half an ampere-hour apart.
    assertHolds(
        -100 * (14 - 0.65) / MeasuredString.NOMINAL_AH,
        judged.cells().get(LOW - 1).estimates().chargeOffsetPercent(),
        0.3,
        "offset");
    assertResistances(judged);
  }

  @ParameterizedTest
  @ValueSource(strings = {"LithiumWerks-APR18650M1B_C32_pseudo_ocv.csv", "sony_us26650_OCV.csv"})
  void onAFlatCurveTheWornAndTheResistiveCellAreNamedAndNoHealthyOne(String table)
      throws IOException, InputProblem {
    Judged judged = judged(Chemistry.LFP, table, 1, "");
    for (int cell = 1; cell <= 8; cell++) {
      assertFinding(judged, cell, cell == WORN ? Finding.LOW_CAPACITY : Finding.HEALTHY);
      double found =
          judged.cells().get(cell - 1).estimates().capacityRelative().find().orElseThrow();
      assertEquals(judged.relativeCapacity(cell), found, 0.015, "cell " + cell);
    }
    assertResistances(judged);
    // Put into the generator: 15 kJ/mol, which a day's swing of twelve degrees has to show.
    double energy = judged.estimates().activationEnergyKilojoulePerMole().find().orElseThrow();
    assertEquals(15, energy, 1);
  }

  /**
   * The low cell never comes near full and alone runs empty, so nothing but the steps of its curve
   * tell that it is low and not worn. What it could hold is not given, or with a range that holds
   * the truth.
   */
  @ParameterizedTest
  @CsvSource({
    "LithiumWerks-APR18650M1B_C32_pseudo_ocv.csv, 280",
    "LithiumWerks-APR18650M1B_C32_pseudo_ocv.csv, 252",
    "sony_us26650_OCV.csv, 280",
    "sony_us26650_OCV.csv, 252"
  })
  void onAFlatCurveALowCellIsNotTakenForAWornOne(String table, double wornAh)
      throws IOException, InputProblem {
    Judged judged = judged(Chemistry.LFP, table, wornAh, 14, "");
    for (int cell = 1; cell <= 8; cell++) {
      Finding otherwise =
          cell == WORN && wornAh < 280
              ? Finding.LOW_CAPACITY
              : cell == LOW ? Finding.OUT_OF_BALANCE : Finding.HEALTHY;
      assertFinding(judged, cell, otherwise);
      CellEstimates estimates = judged.cells().get(cell - 1).estimates();
      if (cell == LOW) {
        double truth = -100 * (14 - 0.65) / MeasuredString.NOMINAL_AH;
        assertHolds(truth, estimates.chargeOffsetPercent(), 1.5, "offset");
        if (estimates.capacityRelative() instanceof Estimate.Known known) {
          double whole = judged.relativeCapacity(cell);
          assertTrue(known.low() <= whole && whole <= known.high(), "capacity " + known);
        }
      } else {
        double found = estimates.capacityRelative().find().orElseThrow();
        assertEquals(judged.relativeCapacity(cell), found, 0.015, "cell " + cell);
      }
    }
  }

  /**
   * With the cells' own table in the pack description, a point in seven of it, ampere-hours come
   * out between the rest voltages that it reaches.
   */
  @ParameterizedTest
  @CsvSource({
    "LFP, LithiumWerks-APR18650M1B_C32_pseudo_ocv.csv, 2.5, 3.55",
    "LFP, sony_us26650_OCV.csv, 2.5, 3.50",
    "NMC, LG-INR21700M50T_C32_pseudo_ocv.csv, 3.0, 4.18",
    "NCA, Molicel-INR21700P42A_C32_pseudo_ocv.csv, 3.0, 4.18"
  })
  void theCellsOwnTableGivesAmpereHours(
      Chemistry chemistry, String table, double emptyV, double fullV)
      throws IOException, InputProblem {
    Judged judged = judged(chemistry, table, 1, ownTable(table, emptyV, fullV));
    MeasuredString string = judged.string();
    double share = string.shareAt(fullV) - string.shareAt(emptyV);
    for (CellVerdict cell : judged.cells()) {
      double truth = share * string.capacityAh()[cell.cell() - 1];
      assertHolds(truth, cell.estimates().capacityAh(), 0.015 * truth, "cell " + cell.cell());
    }
  }

  private static String ownTable(String table, double emptyV, double fullV) throws IOException {
    List<double[]> all = MeasuredString.table("lfp_ocv_tables", table);
    List<String> charge = new ArrayList<>();
    List<String> volt = new ArrayList<>();
    double highest = 0;
    for (int i = 0; i < all.size(); i++) {
      if (i % 7 == 0 || i == all.size() - 1) {
        highest = Math.max(highest, all.get(i)[1]);
        charge.add(Double.toString(all.get(i)[0]));
        volt.add(Double.toString(highest));
      }
    }
    return """
    [limits]
    cell_empty_v = %s
    cell_full_v = %s
    [cell]
    charge_fraction = %s
    open_circuit_v = %s
    """
        .formatted(emptyV, fullV, charge, volt);
  }
}
