package sagbook.season;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/**
 * What a record shows.
 *
 * @param battery as the newest month describes it
 * @param banks one a bank
 */
public record SeasonResult(KeptMonth.Battery battery, List<Bank> banks) {
  public SeasonResult {
    banks = List.copyOf(banks);
  }

  /**
   * A bank's season.
   *
   * @param bank its name
   * @param months that the record has of it, oldest first
   * @param headline the one sentence
   * @param capacityTrend of the string's median cell, % a year
   * @param resistanceTrend of the string's median cell at 25 °C, % a year
   * @param isAgeing whether the string as a whole loses capacity beyond doubt
   * @param findings what the monthly checks found
   * @param evidence plain sentences
   * @param stress what the string went through
   * @param effects what was done and what it changed
   * @param changes steps that no slow trend explains
   * @param cells one a place, cell 1 first
   */
  public record Bank(
      String bank,
      List<KeptMonth> months,
      String headline,
      Estimate capacityTrend,
      Estimate resistanceTrend,
      boolean isAgeing,
      List<Stretch> findings,
      List<String> evidence,
      StressAccount stress,
      List<Effect> effects,
      List<Change> changes,
      List<Cell> cells) {
    public Bank {
      months = List.copyOf(months);
      findings = List.copyOf(findings);
      evidence = List.copyOf(evidence);
      effects = List.copyOf(effects);
      changes = List.copyOf(changes);
      cells = List.copyOf(cells);
    }

    public Instant from() {
      return months.get(0).bank().from();
    }

    public Instant to() {
      return months.get(months.size() - 1).bank().to();
    }
  }

  /**
   * Months in a row in which a check found the same fault.
   *
   * @param cell its place
   * @param finding the cause
   * @param from first month
   * @param to last month
   * @param lasts whether the newest month that can tell still finds it
   * @param words a plain sentence
   */
  public record Stretch(
      int cell, Finding finding, YearMonth from, YearMonth to, boolean lasts, String words) {}

  /**
   * A cell's season.
   *
   * @param cell its place
   * @param mark serial or the keeper's mark
   * @param months of its capacity that were used
   * @param capacityTrend % a year
   * @param capacityAgainstString the same less what the whole string does
   * @param resistanceTrend at 25 °C, % a year
   * @param resistanceAgainstString the same less what the whole string does
   * @param isDrifting whether it gets worse faster than the others, beyond doubt
   * @param yearsTo80 until it holds 80 % of the nominal capacity
   * @param yearsTo70 until it holds 70 %
   * @param evidence plain sentences
   */
  public record Cell(
      int cell,
      String mark,
      int months,
      Estimate capacityTrend,
      Estimate capacityAgainstString,
      Estimate resistanceTrend,
      Estimate resistanceAgainstString,
      boolean isDrifting,
      Estimate yearsTo80,
      Estimate yearsTo70,
      List<String> evidence) {
    public Cell {
      evidence = List.copyOf(evidence);
    }
  }

  /**
   * What an event changed.
   *
   * @param event from the diary
   * @param quantity what was compared
   * @param before mean of up to three months before
   * @param after mean of up to three months after
   * @param change after less before
   * @param words whether it helped, a plain sentence
   */
  public record Effect(
      DiaryEvent event,
      Quantity quantity,
      Estimate before,
      Estimate after,
      Estimate change,
      String words) {}

  /**
   * A step in a cell's values against the string.
   *
   * @param cell its place
   * @param quantity what stepped
   * @param after last day before the step
   * @param before first day after the step
   * @param change new level less old level
   * @param p probability of such a step by chance
   * @param words with the matching event of the diary, a plain sentence
   */
  public record Change(
      int cell,
      Quantity quantity,
      LocalDate after,
      LocalDate before,
      double change,
      double p,
      String words) {}
}
