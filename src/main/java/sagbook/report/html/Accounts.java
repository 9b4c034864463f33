package sagbook.report.html;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.account.BalancingAccount;
import sagbook.account.Exposure;
import sagbook.account.StressAccount;
import sagbook.evidence.Stress;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.Limits;
import sagbook.model.PackDescription;
import sagbook.record.BankResult;
import sagbook.report.chart.DataTable;
import sagbook.report.words.Numbers;
import sagbook.verdict.CellVerdict;
import sagbook.wording.Words;

/** What a bank went through, and what its boards did about balance. */
final class Accounts {
  private static final double HOURS_A_DAY = 24;

  private final BankResult bank;
  private final PackDescription pack;
  private final Words words;

  Accounts(BankResult bank, PackDescription pack, Words words) {
    this.bank = bank;
    this.pack = pack;
    this.words = words;
  }

  /** One line a figure. */
  DataTable stress() {
    StressAccount account = bank.account().stress();
    Stress counted = bank.evidence().stress();
    Limits limits = pack.limits();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(words.say("stress.in"), energy(counted.chargedAh(), counted.chargedKWh())));
    rows.add(
        List.of(words.say("stress.out"), energy(counted.dischargedAh(), counted.dischargedKWh())));
    rows.add(List.of(words.say("stress.efficiency"), percent(account.efficiency())));
    rows.add(List.of(words.say("stress.cycles"), number(account.fullCycles(), "1")));
    rows.add(List.of(words.say("stress.full"), unit(account.heldFullHours(), "h")));
    rows.add(List.of(words.say("stress.since"), since(account.daysSinceFull())));
    rows.add(
        List.of(
            limit("stress.frozen", limits.chargeMinTemperatureC(), "°C"),
            exposure(account.chargedFrozen())));
    rows.add(
        List.of(
            limit("stress.cool", limits.chargeCoolTemperatureC(), "°C"),
            exposure(account.chargedCool())));
    rows.add(
        List.of(
            limit("stress.hot", limits.chargeMaxTemperatureC(), "°C"),
            exposure(account.chargedHot())));
    rows.add(
        List.of(
            limit("stress.above", limits.cellMaxVoltage(), "V"), outside(counted.hoursAboveMax())));
    rows.add(
        List.of(
            limit("stress.below", limits.cellMinVoltage(), "V"), outside(counted.hoursBelowMin())));
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
      sentences.add(words.say("balancing.useful" + curve(), unit(bled, "Ah"), share(useful)));
    }
    String most = unit(account.mostMilliamp(), "mA");
    if (account.nearFullHours() == 0) {
      // No time near full is no rate of bleeding: nothing to compare with a drain.
      sentences.add(words.say("balancing.never-full" + curve()));
    } else if (account.neededMilliamp() instanceof Estimate.Known needed) {
      sentences.add(
          needed.isOpen()
              ? words.say(
                  account.keepsUp().isPresent() ? "balancing.behind.open" : "balancing.open",
                  most,
                  unit(account.nearFullHours(), "h"),
                  unit(needed.low(), "mA"))
              : words.say(
                  account.keepsUp().orElse(false) ? "balancing.keeps-up" : "balancing.falls-behind",
                  most,
                  unit(account.nearFullHours(), "h"),
                  unit(needed.value(), "mA"),
                  unit(needed.high(), "mA")));
      if (bank.verdict().cells().stream().anyMatch(c -> c.finding() == Finding.SELF_DISCHARGE)) {
        sentences.add(words.say("balancing.find-drain"));
      }
    } else {
      sentences.add(words.say("balancing.drain-unknown", most, unit(account.nearFullHours(), "h")));
    }
    sentences.addAll(levelling(account));
    for (int c = 0; c < account.boards().size(); c++) {
      BalancingAccount.Board board = account.boards().get(c);
      if (board.isHeldBackByWarmth()) {
        sentences.add(words.say("balancing.warm", Integer.toString(c + 1)));
      }
    }
    return sentences;
  }

  /** How long the boards need for cells that are out of balance, were all as in this log. */
  private List<String> levelling(BalancingAccount account) {
    List<String> sentences = new ArrayList<>();
    for (CellVerdict cell : bank.verdict().cells()) {
      if (cell.finding() == Finding.OUT_OF_BALANCE
          && account.mostMilliamp() > 0
          && cell.estimates().chargeOffsetPercent() instanceof Estimate.Known offset) {
        double daysAPercent =
            pack.nominalCapacityAh() / 100 / (account.mostMilliamp() / 1000) / HOURS_A_DAY;
        boolean less = offset.value() < 0;
        Estimate.Known days =
            new Estimate.Known(
                daysAPercent * Math.abs(offset.value()),
                daysAPercent * Math.max(0, less ? -offset.high() : offset.low()),
                daysAPercent * (less ? -offset.low() : offset.high()));
        sentences.add(
            words.say(
                "balancing.levelling",
                Integer.toString(cell.cell()),
                Numbers.value(days),
                Numbers.low(days),
                Numbers.high(days)));
      }
    }
    return sentences;
  }

  /** On a curve without a plateau a board sees everywhere which cell is ahead. */
  private String curve() {
    return bank.chemistry() == Chemistry.LFP ? "" : ".sloping";
  }

  /** A share in whole per cent, and as a bound where that would read as all or nothing. */
  private String share(double share) {
    boolean nearlyAll = share < 1 && share > 0.99;
    boolean nearlyNone = share > 0 && share < 0.01;
    return nearlyAll
        ? words.say("share.nearly-all")
        : nearlyNone ? words.say("share.nearly-none") : Numbers.percent(share);
  }

  private String limit(String key, double limit, String unit) {
    return words.say(key, Numbers.with(Numbers.plain(limit), unit));
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
              board.bledAh() > 0 ? share(board.nearFullShare()) : words.say("none.short"),
              Double.isFinite(board.lastS())
                  ? words.date(Instant.ofEpochSecond(Math.round(board.lastS())), pack.timezone())
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
        .map(
            e ->
                e.hours() == 0
                    ? words.say("never")
                    : unit(e.hours(), "h") + ", " + unit(e.chargedAh(), "Ah"))
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
    double size = Math.abs(value);
    return Numbers.significant(value, size >= 1000 ? 4 : size >= 100 ? 3 : 2);
  }
}
