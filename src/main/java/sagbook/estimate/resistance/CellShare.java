package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.ResistanceChange;
import sagbook.estimate.response.ReducedWindow;
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
  private static final double STRETCHES_ARE_ALIKE = 2.4;

  private static final double LEAST_SD = 0.006;

  /** The shares of all cells, cell 1 first. */
  static List<CellShare> all(
      List<ReducedWindow> windows,
      double[] scale,
      StringResponse response,
      double pulseS,
      CellComparison compared) {
    DayByDay days = DayByDay.of(windows, scale, response, pulseS);
    List<CellShare> all = new ArrayList<>();
    for (int c = 0; c < compared.whole().length; c++) {
      Optional<LevelBreak> change = days.breakOf(c);
      if (change.isEmpty()) {
        all.add(steady(compared, c));
      } else {
        double since = days.startS()[change.get().before()];
        int first = 0;
        while (windows.get(first).window().startS() < since) {
          first++;
        }
        double[] left = Arrays.copyOfRange(scale, first, scale.length);
        CellComparison after =
            CellComparison.of(windows.subList(first, windows.size()), left, response, pulseS);
        all.add(changed(after, c, change.get(), since));
      }
    }
    return all;
  }

  private static CellShare steady(CellComparison compared, int c) {
    double relative = compared.whole()[c] / Robust.median(compared.whole());
    double slow = compared.slow()[c] / Robust.median(compared.slow());
    return new CellShare(
        relative,
        sd(compared.wholeSd()[c], relative, slow),
        compared.ohmic()[c] - Robust.median(compared.ohmic()),
        compared.ohmicSd()[c],
        slow,
        compared.slowSd()[c],
        Optional.empty());
  }

  /** The whole as the days show it at the end; whether it is slow, as all rows since the change. */
  private static CellShare changed(CellComparison after, int c, LevelBreak found, double since) {
    CellShare mean = steady(after, c);
    double more = found.end() - mean.relative();
    return new CellShare(
        found.end(),
        sd(found.endSd(), found.end(), mean.slow()),
        mean.ohmicExcess() + more,
        Math.hypot(mean.ohmicExcessSd(), found.endSd()),
        mean.slow(),
        mean.slowSd(),
        Optional.of(
            new ResistanceChange(
                since,
                Estimate.of(
                    found.level(), Math.hypot(STRETCHES_ARE_ALIKE * found.levelSd(), LEAST_SD)))));
  }

  /**
   * A slow part that is out of all proportion is partly the curve of a cell that stands elsewhere
   * on it, and then the whole is less sure.
   */
  private static double sd(double scatter, double relative, double slow) {
    double odd = 0.05 * Math.abs(slow - relative);
    return Math.hypot(Math.hypot(STRETCHES_ARE_ALIKE * scatter, LEAST_SD), odd);
  }
}
