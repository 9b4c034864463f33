package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.IntStream;
import sagbook.estimate.ResistanceChange;
import sagbook.estimate.response.StringResponse;
import sagbook.model.Estimate;
import sagbook.numeric.LevelBreak;
import sagbook.numeric.Robust;

/**
 * One cell's response against the string's median, with standard deviations that hold between
 * packs; of a cell that changed within the log, as it is at the log's end.
 *
 * @param relative response at the pulse time over the median
 * @param ohmicExcess immediate part above the median's, as a share of the string's resistance
 * @param slow slow part over the median
 * @param change since when it is another one, if it changed
 */
record CellShare(
    double relative,
    double relativeSd,
    double ohmicExcess,
    double ohmicExcessSd,
    double slow,
    double slowSd,
    Optional<ResistanceChange> change) {
  /**
   * By how much leaving out stretches understates the spread between cells, and likewise the
   * scatter of days what a line through them may be off by; set so that intervals hold the truth on
   * invented packs of a generator that shares no code with this project.
   */
  static final double STRETCHES_ARE_ALIKE = 2.4;

  /** The same for the two parts of a response, which scatter of themselves; set likewise. */
  static final double STRETCHES_ARE_ALIKE_IN_PARTS = 1.5;

  /** Share of the string's resistance by which the parts of sound cells differ; set likewise. */
  private static final double PARTS_DIFFER_SD = 0.03;

  /**
   * Brings cells of one string to the same temperature and charge.
   *
   * @param warmth how much warmer or colder each is
   * @param kilojoule activation energy, kJ/mol
   * @param kilojouleSd its standard deviation, kJ/mol
   * @param chargeSlope by how much the logarithm of resistance rises with charge 0 to 1
   * @param offset charge of each cell beyond the string's, as a share of capacity
   */
  record AtOnePlace(
      CellWarmth warmth,
      double kilojoule,
      double kilojouleSd,
      double chargeSlope,
      double[] offset) {
    /** Share of the correction for charge by which that is wrong. Common practice, no source. */
    private static final double CHARGE_SHARE = 0.5;

    double factor(int cell) {
      return warmth.factor(cell, kilojoule) * Math.exp(-chargeSlope * offset[cell]);
    }

    double factorSd(int cell) {
      return Math.hypot(
          warmth.factorSd(cell, kilojoule, kilojouleSd), CHARGE_SHARE * chargeSlope * offset[cell]);
    }

    /** Response at the pulse time; the ohmic part beside the cell knows neither. */
    double whole(List<CellComparison.Parts> parts, int cell) {
      return slow(parts, cell) + parts.get(cell).ohmic();
    }

    double slow(List<CellComparison.Parts> parts, int cell) {
      return factor(cell) * parts.get(cell).slow();
    }
  }

  /**
   * Median response at the pulse time over the string's mean, all at one temperature and charge.
   */
  static double medianWhole(CellComparison compared, AtOnePlace law) {
    return median(compared.held(), law::whole);
  }

  private static double median(
      List<CellComparison.Parts> parts,
      ToDoubleBiFunction<List<CellComparison.Parts>, Integer> of) {
    return Robust.median(
        IntStream.range(0, parts.size()).mapToDouble(c -> of.applyAsDouble(parts, c)).toArray());
  }

  /** Standard deviation of the string's own response as it holds between packs, relative. */
  static double stringSd(CellComparison compared) {
    return STRETCHES_ARE_ALIKE * compared.stringSd();
  }

  /** The shares of all cells, cell 1 first. */
  static List<CellShare> all(
      UsedWindows used,
      StringResponse response,
      double pulseS,
      CellComparison compared,
      AtOnePlace law) {
    DayByDay days = DayByDay.of(used, response, pulseS);
    List<CellShare> all = new ArrayList<>();
    for (int c = 0; c < compared.held().size(); c++) {
      Optional<LevelBreak> change = days.breakOf(c);
      if (change.isEmpty()) {
        all.add(steady(compared, law, used, c));
      } else {
        UsedWindows later = used.since(days.startS()[change.get().before()]);
        CellComparison after = CellComparison.of(later, response, pulseS);
        all.add(changed(after, law, used, later, c, change.get(), days));
      }
    }
    return all;
  }

  private static CellShare steady(
      CellComparison compared, AtOnePlace law, UsedWindows used, int c) {
    CellComparison.Parts told = compared.told().get(c);
    CellComparison.Parts held = compared.held().get(c);
    double median = medianWhole(compared, law);
    double relative = law.whole(compared.held(), c) / median;
    double medianSlow = median(compared.told(), law::slow);
    double slow = law.slow(compared.told(), c) / medianSlow;
    double ohmic = told.ohmic() - median(compared.told(), (parts, of) -> parts.get(of).ohmic());
    double scatter = sd(held.wholeSd() / median, used, relative, slow);
    double split = Math.hypot(partSd(held.ohmicSd()), told.ohmic() - held.ohmic());
    return new CellShare(
        relative,
        hypot(
            Math.hypot(scatter, brought(split, compared)),
            law.factorSd(c) * slow,
            used.drive().wholeSd(used.scale(), ohmic / median, relative)),
        ohmic,
        partSd(told.ohmicSd()),
        slow,
        hypot(
            partSd(told.slowSd() / medianSlow),
            law.factorSd(c) * slow,
            used.drive().shapeSd(ohmic)),
        Optional.empty());
  }

  /** The whole as the days show it at the end; whether it is slow, as all rows since the change. */
  private static CellShare changed(
      CellComparison after,
      AtOnePlace law,
      UsedWindows whole,
      UsedWindows used,
      int c,
      LevelBreak found,
      DayByDay days) {
    CellShare mean = steady(after, law, used, c);
    double end = law.factor(c) * found.end();
    // Days with days, for the rows' split holds joints likelier small than theirs does.
    double more = law.factor(c) * (found.end() - days.mean(c, found.before()));
    double before = law.factor(c) * found.level();
    double split = partSd(after.told().get(c).ohmicSd());
    Drive drive = used.drive();
    return new CellShare(
        end,
        hypot(
            Math.hypot(sd(found.endSd(), used, end, mean.slow()), brought(split, after)),
            law.factorSd(c) * mean.slow(),
            drive.wholeSd(used.scale(), mean.ohmicExcess(), end)),
        mean.ohmicExcess() + more,
        Math.hypot(mean.ohmicExcessSd(), found.endSd()),
        mean.slow(),
        mean.slowSd(),
        Optional.of(
            new ResistanceChange(
                days.startS()[found.before()],
                Estimate.of(
                    before,
                    hypot(
                        STRETCHES_ARE_ALIKE * found.levelSd(),
                        drive.leastSd(),
                        whole.drive().wholeSd(whole.scale(), before - 1, before))))));
  }

  /** What splitting joint and cell wrongly by so much makes of the way to the reference. */
  private static double brought(double split, CellComparison compared) {
    return split * (1 - 1 / compared.size());
  }

  private static double partSd(double scatter) {
    return Math.hypot(STRETCHES_ARE_ALIKE_IN_PARTS * scatter, PARTS_DIFFER_SD);
  }

  /**
   * A slow part that is out of all proportion is partly the curve of a cell that stands elsewhere
   * on it, and then the whole is less sure.
   */
  private static double sd(double scatter, UsedWindows used, double relative, double slow) {
    double odd = 0.05 * Math.abs(slow - relative);
    return hypot(STRETCHES_ARE_ALIKE * scatter, used.drive().leastSd(), odd);
  }

  private static double hypot(double a, double b, double c) {
    return Math.hypot(Math.hypot(a, b), c);
  }
}
