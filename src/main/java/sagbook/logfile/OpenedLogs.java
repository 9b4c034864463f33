package sagbook.logfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.Channels;
import sagbook.model.LogMapping;
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

  /** A bank's files, as the look through them showed. */
  public List<ReadReport.Input> files(String bank) {
    return logs(bank).files().stream().map(FileSurvey::input).toList();
  }

  /** Hands all rows of a bank to {@code sink} in time order, block after block. */
  public ReadReport read(String bank, SampleSink sink) throws InputProblem {
    return new BankReader(logs(bank)).read(sink);
  }

  /**
   * How the bank's files are read, as column mappings that can be written down, edited and given
   * back; files of the same layout share one.
   */
  public List<LogMapping> mappings(String bank) {
    Map<Map<String, String>, LogMapping> byLayout = new LinkedHashMap<>();
    for (FileSurvey file : logs(bank).files()) {
      FilePlan plan = file.plan();
      Map<String, String> meanings = new LinkedHashMap<>();
      for (Column column : plan.columns()) {
        meanings.put(column.name(), column.meaning().words());
      }
      LogMapping known = byLayout.get(meanings);
      Dialect dialect = plan.dialect();
      LogMapping mapping =
          new LogMapping(
              known == null ? plan.source().name() : "*",
              dialect.isJson() ? Optional.empty() : Optional.of(dialect.delimiter()),
              Optional.of(dialect.decimalComma()),
              dialect.isJson() ? Optional.empty() : Optional.of(dialect.headerLine()),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              meanings);
      byLayout.put(meanings, mapping);
    }
    return List.copyOf(byLayout.values());
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
