package sagbook.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sagbook.whatif.Outcome;
import sagbook.whatif.Prospect;
import sagbook.whatif.Spare;
import sagbook.wording.Words;

/** The part of results.json that says what a change to the string would buy. */
final class WhatIfJson {
  private static final Words WORDS = Words.english();

  /** All pairs are in the tables; here are those that buy most. */
  private static final int PAIRS = 10;

  private WhatIfJson() {}

  static void put(ObjectNode bank, Prospect prospect) {
    prospect.chargeEndsWith().forEach(bank.putArray("charge_ends_with")::add);
    prospect.dischargeEndsWith().forEach(bank.putArray("discharge_ends_with")::add);
    Spare spare = prospect.spare();
    ObjectNode node = bank.putObject("spare");
    node.put("capacity_ah", Rounded.of(spare.capacityAh()));
    node.put("told", spare.told());
    if (spare.resistanceMilliohm().isPresent()) {
      node.put("resistance_mohm", Rounded.of(spare.resistanceMilliohm().getAsDouble()));
    } else {
      node.putNull("resistance_mohm");
      node.put("resistance_mohm_note", WORDS.say("result.spare-not-told"));
    }
    ArrayNode all = bank.putArray("what_if");
    for (Outcome outcome : shown(prospect)) {
      all.add(outcome(all.objectNode(), outcome));
    }
  }

  private static List<Outcome> shown(Prospect prospect) {
    List<Outcome> shown = new ArrayList<>();
    shown.add(prospect.rebalanced());
    shown.addAll(prospect.mended());
    shown.addAll(prospect.single());
    prospect.pairs().stream()
        .sorted(Comparator.comparingDouble(p -> -p.gainAh().find().orElse(0)))
        .limit(PAIRS)
        .forEach(shown::add);
    return shown;
  }

  private static ObjectNode outcome(ObjectNode node, Outcome outcome) {
    node.put("change", outcome.change().kind().words());
    outcome.change().cells().forEach(node.putArray("cells")::add);
    for (Gain gain : Gain.values()) {
      ResultsJson.estimate(node, gain.key(), gain.of(outcome));
    }
    return node;
  }
}
