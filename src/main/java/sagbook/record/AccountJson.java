package sagbook.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.account.Account;
import sagbook.account.BalancingAccount;
import sagbook.account.Exposure;
import sagbook.account.StressAccount;
import sagbook.wording.Words;

/** The part of results.json that says what a bank went through and what its boards did. */
final class AccountJson {
  private static final Words WORDS = Words.english();

  private AccountJson() {}

  static void put(ObjectNode bank, Account account) {
    stress(bank.putObject("stress"), account.stress());
    if (account.balancing().isPresent()) {
      balancing(bank.putObject("balancing"), account.balancing().get());
    } else {
      bank.putNull("balancing");
      bank.put("balancing_note", WORDS.say("result.bleed-not-logged"));
    }
  }

  private static void stress(ObjectNode node, StressAccount stress) {
    exposure(node, "charged_frozen", stress.chargedFrozen());
    exposure(node, "charged_cool", stress.chargedCool());
    exposure(node, "charged_hot", stress.chargedHot());
    ResultsJson.number(node, "held_full_hours", stress.heldFullHours());
    number(node, "days_since_full", stress.daysSinceFull());
    number(node, "full_cycles", stress.fullCycles());
    number(node, "efficiency", stress.efficiency());
    number(node, "usual_spread_k", stress.usualSpreadK());
    number(node, "largest_spread_k", stress.largestSpreadK());
  }

  private static void exposure(ObjectNode node, String name, Optional<Exposure> exposure) {
    number(node, name + "_hours", exposure.map(Exposure::hours));
    number(node, name + "_ah", exposure.map(Exposure::chargedAh));
  }

  private static void balancing(ObjectNode node, BalancingAccount account) {
    ResultsJson.number(node, "near_full_hours", account.nearFullHours());
    ResultsJson.number(node, "most_ma", account.mostMilliamp());
    ResultsJson.estimate(node, "needed_ma", account.neededMilliamp());
    if (account.keepsUp().isPresent()) {
      node.put("keeps_up", account.keepsUp().get());
    } else {
      node.putNull("keeps_up");
      node.put("keeps_up_note", WORDS.say("result.drain-unknown"));
    }
    ArrayNode boards = node.putArray("boards");
    int cell = 1;
    for (BalancingAccount.Board board : account.boards()) {
      ObjectNode one = boards.addObject();
      one.put("cell", cell++);
      ResultsJson.number(one, "bled_ah", board.bledAh());
      ResultsJson.number(one, "bled_hours", board.hours());
      ResultsJson.number(one, "near_full_share", board.nearFullShare());
      if (Double.isFinite(board.lastS())) {
        one.put("last_bled", Instant.ofEpochSecond(Math.round(board.lastS())).toString());
      } else {
        one.putNull("last_bled");
        one.put("last_bled_note", WORDS.say("result.never-bled"));
      }
      one.put("held_back_by_warmth", board.isHeldBackByWarmth());
      ResultsJson.estimate(one, "hours_to_level", board.hoursToLevel());
    }
  }

  private static void number(ObjectNode node, String name, Optional<Double> value) {
    ResultsJson.number(node, name, value.orElse(Double.NaN));
  }

  private static void number(ObjectNode node, String name, OptionalDouble value) {
    ResultsJson.number(node, name, value.orElse(Double.NaN));
  }
}
