package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.model.Channels;
import sagbook.model.SampleSink;

/** Logs that have been found and understood, ready to be read bank by bank. */
public final class OpenedLogs {
  private final List<BankLogs> banks;

  OpenedLogs(List<BankLogs> banks) {
    this.banks = List.copyOf(banks);
  }

  /** Names of the banks, in the order of the pack description. */
  public List<String> banks() {
    List<String> names = new ArrayList<>();
    for (BankLogs bank : banks) {
      names.add(bank.name());
    }
    return names;
  }

  /** Which quantities a bank's logs hold. */
  public Channels channels(String bank) {
    return logs(bank).channels();
  }

  /** Hands all rows of a bank to {@code sink} in time order, block after block. */
  public ReadReport read(String bank, SampleSink sink) throws InputProblem {
    return new BankReader(logs(bank)).read(sink);
  }

  private BankLogs logs(String bank) {
    for (BankLogs logs : banks) {
      if (logs.name().equals(bank)) {
        return logs;
      }
    }
    throw new IllegalArgumentException("no bank " + bank);
  }
}
