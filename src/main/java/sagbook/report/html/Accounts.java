package sagbook.report.html;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.account.BalancingAccount;
import sagbook.account.Exposure;
import sagbook.account.StressAccount;
import sagbook.evidence.Stress;
import sagbook.model.Estimate;
import sagbook.record.BankResult;
import sagbook.report.chart.DataTable;
import sagbook.report.words.Numbers;
import sagbook.wording.Words;

/** What a bank went through, and what its boards did about balance. */
final class Accounts {
  private final BankResult bank;
  private final ZoneId zone;
  private final Words words;

  Accounts(BankResult bank, ZoneId zone, Words words) {
    this.bank = bank;
    this.zone = zone;
    this.words = words;
  }

  /** One line a figure. */
  DataTable stress() {
    StressAccount account = bank.account().stress();
    Stress counted = bank.evidence().stress();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(words.say("stress.in"), energy(counted.chargedAh(), counted.chargedKWh())));
    rows.add(
        List.of(words.say("stress.out"), energy(counted.dischargedAh(), counted.dischargedKWh())));
    rows.add(List.of(words.say("stress.efficiency"), percent(account.efficiency())));
    rows.add(List.of(words.say("stress.cycles"), number(account.fullCycles(), "1")));
    rows.add(List.of(words.say("stress.full"), unit(account.heldFullHours(), "h")));
    rows.add(List.of(words.say("stress.since"), since(account.daysSinceFull())));
    rows.add(List.of(words.say("stress.frozen"), exposure(account.chargedFrozen())));
    rows.add(List.of(words.say("stress.cool"), exposure(account.chargedCool())));
    rows.add(List.of(words.say("stress.hot"), exposure(account.chargedHot())));
    rows.add(List.of(words.say("stress.above"), outside(counted.hoursAboveMax())));
    rows.add(List.of(words.say("stress.below"), outside(counted.hoursBelowMin())));
    rows.add(
        List.of(
            words.say("stress.spread"),
            account.usualSpreadK().isPresent()
                ? words.say(
                    "stress.spread.value",
                    number(account.usualSpreadK(), "K"),
                    number(account.largestSpreadK(), "K"))
                : words.say("not-logged")));
    return new DataTable(
        List.of(words.say("stress.column"), words.say("stress.column.value")), rows);
  }

  /** What balancing did, in sentences. */
  List<String> balancing() {
    Optional<BalancingAccount> found = bank.account().balancing();
    if (found.isEmpty()) {
      return List.of(words.say("balancing.not-logged"));
    }
    BalancingAccount account = found.get();
    double bled = account.boards().stream().mapToDouble(BalancingAccount.Board::bledAh).sum();
    List<String> sentences = new ArrayList<>();
    if (bled == 0) {
      sentences.add(words.say("balancing.none"));
    } else {
      double useful =
          account.boards().stream().mapToDouble(b -> b.bledAh() * b.nearFullShare()).sum() / bled;
      sentences.add(words.say("balancing.useful", unit(bled, "Ah"), Numbers.percent(useful)));
    }
    String most = unit(account.mostMilliamp(), "mA");
    if (account.nearFullHours() == 0) {
      // No time near full is no rate of bleeding: nothing to compare with a drain.
      sentences.add(words.say("balancing.never-full"));
    } else if (account.neededMilliamp() instanceof Estimate.Known needed) {
      sentences.add(
          words.say(
              account.keepsUp().orElse(false) ? "balancing.keeps-up" : "balancing.falls-behind",
              most,
              unit(account.nearFullHours(), "h"),
              unit(needed.value(), "mA"),
              unit(needed.high(), "mA")));
    } else {
      sentences.add(words.say("balancing.drain-unknown", most));
    }
    for (int c = 0; c < account.boards().size(); c++) {
      BalancingAccount.Board board = account.boards().get(c);
      if (board.isHeldBackByWarmth()) {
        sentences.add(words.say("balancing.warm", Integer.toString(c + 1)));
      }
    }
    return sentences;
  }

  /** One line a board; empty when no bleed level was logged. */
  DataTable boards() {
    List<List<String>> rows = new ArrayList<>();
    int cell = 1;
    for (BalancingAccount.Board board :
        bank.account().balancing().map(BalancingAccount::boards).orElse(List.of())) {
      rows.add(
          List.of(
              Integer.toString(cell++),
              significant(board.bledAh()),
              significant(board.hours()),
              board.bledAh() > 0 ? Numbers.percent(board.nearFullShare()) : words.say("none.short"),
              Double.isFinite(board.lastS())
                  ? words.date(Instant.ofEpochSecond(Math.round(board.lastS())), zone)
                  : words.say("never"),
              board.hoursToLevel() instanceof Estimate.Known hours
                  ? significant(hours.value())
                  : words.say("none")));
    }
    return new DataTable(
        List.of(
            words.say("column.cell"),
            words.say("balancing.column.bled"),
            words.say("balancing.column.hours"),
            words.say("balancing.column.useful"),
            words.say("balancing.column.last"),
            words.say("balancing.column.level")),
        rows);
  }

  private String energy(double ah, double kWh) {
    return Double.isFinite(ah) ? unit(ah, "Ah") + ", " + unit(kWh, "kWh") : words.say("not-logged");
  }

  private String exposure(Optional<Exposure> exposure) {
    return exposure
        .map(e -> unit(e.hours(), "h") + ", " + unit(e.chargedAh(), "Ah"))
        .orElse(words.say("not-logged"));
  }

  private String since(OptionalDouble days) {
    return days.isPresent()
        ? words.say("stress.since.days", Numbers.text(days.getAsDouble(), 1))
        : words.say("stress.since.never");
  }

  private String outside(double[] hours) {
    List<String> parts = new ArrayList<>();
    for (int c = 0; c < hours.length; c++) {
      if (hours[c] > 0) {
        parts.add(words.say("stress.outside", Integer.toString(c + 1), unit(hours[c], "h")));
      }
    }
    return parts.isEmpty() ? words.say("never") : String.join("; ", parts);
  }

  private String percent(OptionalDouble share) {
    return share.isPresent() ? Numbers.percent(share.getAsDouble(), 1) : words.say("none");
  }

  private String number(OptionalDouble value, String unit) {
    return value.isPresent() ? unit(value.getAsDouble(), unit) : words.say("none");
  }

  private static String unit(double value, String unit) {
    return Numbers.with(significant(value), unit);
  }

  private static String significant(double value) {
    return Numbers.significant(value, Math.abs(value) >= 100 ? 4 : 2);
  }
}
