package sagbook.season;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.model.Estimate;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.KeptMonth;

/**
 * What the seasons do to resistance. A month's resistance at 25 °C is reckoned back to the month's
 * own mean temperature by Arrhenius' law with the month's own activation energy, which is what the
 * boards saw on average: R(T) = R(25 °C) · exp(E/R_g · (1/T − 1/298.15 K)).
 */
public final class Warmth {
  /** J/(mol K), CODATA 2018. */
  private static final double GAS = 8.314462618;

  private static final double REFERENCE_K = 298.15;
  private static final double ZERO_C = 273.15;

  /** A smaller swing changes resistance by little. */
  private static final double SWING_C = 5;

  private Warmth() {}

  /** Mean temperature of a month's cells, °C. */
  public static OptionalDouble mean(KeptMonth month) {
    return month.cells().stream()
        .filter(cell -> cell.readings().containsKey(CellReading.MEAN_TEMPERATURE_C))
        .mapToDouble(cell -> cell.readings().get(CellReading.MEAN_TEMPERATURE_C))
        .average();
  }

  /** The factor from 25 °C to the month's own temperature, if both are known. */
  public static OptionalDouble factor(KeptMonth month) {
    OptionalDouble mean = mean(month);
    if (mean.isPresent()
        && month.figure(BankFigure.Estimated.ACTIVATION_ENERGY_KJ_PER_MOL)
            instanceof Estimate.Known energy) {
      double kelvin = mean.getAsDouble() + ZERO_C;
      return OptionalDouble.of(
          Math.exp(1000 * energy.value() / GAS * (1 / kelvin - 1 / REFERENCE_K)));
    }
    return OptionalDouble.empty();
  }

  /** What is winter and what is ageing, where temperatures differed. */
  static Optional<String> sentence(List<KeptMonth> months, Common common) {
    KeptMonth warmest = null;
    KeptMonth coldest = null;
    for (KeptMonth month : months) {
      if (factor(month).isPresent()) {
        double here = mean(month).orElseThrow();
        warmest = warmest == null || here > mean(warmest).orElseThrow() ? month : warmest;
        coldest = coldest == null || here < mean(coldest).orElseThrow() ? month : coldest;
      }
    }
    if (warmest == null || coldest == null) {
      return Optional.empty();
    }
    double warm = mean(warmest).orElseThrow();
    double cold = mean(coldest).orElseThrow();
    if (warm - cold < SWING_C || !(common.resistance() instanceof Line.Result.Drawn drawn)) {
      return Optional.empty();
    }
    double rise = factor(coldest).orElseThrow() / factor(warmest).orElseThrow() - 1;
    return Optional.of(
        SeasonWords.say(
            "warmth",
            SeasonWords.number(warm, "%.0f"),
            SeasonWords.number(cold, "%.0f"),
            SeasonWords.number(100 * rise, "%.0f"),
            SeasonWords.rate(drawn.line().percentPerYear())));
  }
}
