package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import sagbook.evidence.Stress;
import sagbook.model.Finding;
import sagbook.model.Limits;
import sagbook.wording.Words;

/** Which limits cells passed, as sentences; what a sensor says that lies is not counted. */
final class PassedLimits {
  private static final Words WORDS = Words.english();

  /** More cells than this that passed one limit are told in one sentence. */
  private static final int MOST_ALONE = 2;

  private final Stress stress;
  private final Limits limits;
  private final Rules rules;

  PassedLimits(Stress stress, Limits limits, Rules rules) {
    this.stress = stress;
    this.limits = limits;
    this.rules = rules;
  }

  /** The limits, the most urgent first. */
  private enum Passed {
    LOW_FOR_GOOD("limit.low.for-good"),
    HIGH("limit.high"),
    LOW("limit.low"),
    HOT("limit.hot"),
    COLD("limit.cold");

    private final String key;

    Passed(String key) {
      this.key = key;
    }
  }

  /** Sentences about one cell, 1 for the first. */
  List<String> of(int cell, Finding finding) {
    List<String> all = new ArrayList<>();
    for (Passed limit : Passed.values()) {
      if (isPassed(limit, cell - 1, finding)) {
        all.add(sentence(limit, List.of(cell)));
      }
    }
    return all;
  }

  /**
   * Sentences about all cells, the most urgent first; where many passed one limit, one for all.
   *
   * @param findings one a cell, cell 1 first
   */
  List<String> of(List<Finding> findings) {
    List<String> all = new ArrayList<>();
    for (Passed limit : Passed.values()) {
      List<Integer> cells = new ArrayList<>();
      for (int cell = 1; cell <= findings.size(); cell++) {
        if (isPassed(limit, cell - 1, findings.get(cell - 1))) {
          cells.add(cell);
        }
      }
      if (cells.size() > MOST_ALONE) {
        all.add(sentence(limit, cells));
      } else {
        cells.forEach(cell -> all.add(sentence(limit, List.of(cell))));
      }
    }
    return all;
  }

  private boolean isPassed(Passed limit, int c, Finding finding) {
    boolean volts = finding != Finding.VOLTAGE_SENSOR;
    boolean warmth = finding != Finding.TEMPERATURE_SENSOR;
    return switch (limit) {
      case HIGH ->
          volts
              && stress.hoursAboveMax()[c] > rules.graceHours()
              && stress.highestVoltageV()[c] > limits.cellMaxVoltage() + rules.graceV();
      case LOW -> volts && isLow(c) && !isLowForGood(c);
      case LOW_FOR_GOOD -> volts && isLow(c) && isLowForGood(c);
      case HOT -> warmth && stress.hoursHot()[c] > rules.graceHours();
      case COLD -> warmth && stress.hoursChargingCold()[c] > rules.coldGraceHours();
    };
  }

  private boolean isLow(int c) {
    return stress.hoursBelowMin()[c] > rules.graceHours()
        && stress.lowestVoltageV()[c] < limits.cellMinVoltage() - rules.graceV();
  }

  /** Whether a cell, 1 for the first, was drained so far that it is not to be charged again. */
  boolean isDrainedForGood(int cell, Finding finding) {
    return isPassed(Passed.LOW_FOR_GOOD, cell - 1, finding);
  }

  private boolean isLowForGood(int c) {
    return stress.lowestVoltageV()[c] < rules.forGood() * limits.cellMinVoltage();
  }

  /** One cell, or several by those that went furthest. */
  private String sentence(Passed limit, List<Integer> cells) {
    String key = cells.size() == 1 ? limit.key : limit.key + ".many";
    String who =
        cells.size() == 1
            ? Integer.toString(cells.get(0))
            : VerdictWords.capital(VerdictWords.cells(cells));
    return switch (limit) {
      case HIGH ->
          WORDS.say(
              key,
              who,
              Words.fixed(most(stress.highestVoltageV(), cells), 2),
              Words.fixed(limits.cellMaxVoltage(), 2),
              Words.fixed(most(stress.hoursAboveMax(), cells), 1));
      case LOW, LOW_FOR_GOOD ->
          WORDS.say(
              key,
              who,
              Words.fixed(least(stress.lowestVoltageV(), cells), 2),
              Words.fixed(limits.cellMinVoltage(), 2),
              Words.fixed(most(stress.hoursBelowMin(), cells), 1));
      case HOT ->
          WORDS.say(
              key,
              who,
              Words.fixed(most(stress.highestTemperatureC(), cells), 0),
              Words.fixed(limits.dischargeMaxTemperatureC(), 0));
      case COLD ->
          WORDS.say(
              key,
              who,
              Words.fixed(most(stress.hoursChargingCold(), cells), 1),
              Words.fixed(limits.chargeMinTemperatureC(), 0));
    };
  }

  private static double most(double[] values, List<Integer> cells) {
    return cells.stream().mapToDouble(cell -> values[cell - 1]).max().orElseThrow();
  }

  private static double least(double[] values, List<Integer> cells) {
    return cells.stream().mapToDouble(cell -> values[cell - 1]).min().orElseThrow();
  }
}
