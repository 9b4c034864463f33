package sagbook.record;

import java.util.List;
import sagbook.model.PackDescription;
import sagbook.verdict.Severity;

/**
 * One run of {@code check}.
 *
 * @param softwareVersion of Sagbook
 * @param pack as described by the keeper
 * @param inputs the log files
 * @param banks one a bank
 */
public record CheckResult(
    String softwareVersion, PackDescription pack, List<InputFile> inputs, List<BankResult> banks) {
  public CheckResult {
    inputs = List.copyOf(inputs);
    banks = List.copyOf(banks);
  }

  /** The most urgent of the banks' severities. */
  public Severity severity() {
    Severity most = Severity.WELL;
    for (BankResult bank : banks) {
      if (bank.verdict().severity().compareTo(most) > 0) {
        most = bank.verdict().severity();
      }
    }
    return most;
  }
}
