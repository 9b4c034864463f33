package sagbook.record;

import java.time.Instant;
import java.util.List;
import sagbook.account.Account;
import sagbook.estimate.BankEstimates;
import sagbook.evidence.Evidence;
import sagbook.model.ChannelQuality;
import sagbook.model.Chemistry;
import sagbook.verdict.BankVerdict;
import sagbook.verdict.TestPlan;
import sagbook.whatif.Prospect;

/**
 * All that a check found out about one bank.
 *
 * @param bank its name
 * @param chemistry of its cells
 * @param seriesCells cells in series
 * @param from first sample
 * @param to last sample
 * @param evidence what the estimates rest on
 * @param estimates quantities with intervals
 * @param account what the bank went through and what balancing did
 * @param prospect what the string gives, and what it would give after a change
 * @param verdict the decision
 * @param plan what to measure next month
 * @param reading how the logs were read and what was wrong with them, plain sentences
 * @param channels how good each channel of the log is
 */
public record BankResult(
    String bank,
    Chemistry chemistry,
    int seriesCells,
    Instant from,
    Instant to,
    Evidence evidence,
    BankEstimates estimates,
    Account account,
    Prospect prospect,
    BankVerdict verdict,
    TestPlan plan,
    List<String> reading,
    List<ChannelQuality> channels) {
  public BankResult {
    reading = List.copyOf(reading);
    channels = List.copyOf(channels);
  }
}
