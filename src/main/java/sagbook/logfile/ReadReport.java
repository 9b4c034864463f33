package sagbook.logfile;

import java.time.Instant;
import java.util.List;
import sagbook.issue.IssueStore;
import sagbook.model.ChannelQuality;

/**
 * How a bank's logs were read.
 *
 * @param inputs the files
 * @param sentences how columns, units, clock and sign were recognised, what was left out and why,
 *     gaps: plain sentences
 * @param advice what to change in the logging to get better answers, plain sentences
 * @param channels how good each channel is
 * @param lagS how long after the current each cell is written, s; empty where the log, which has a
 *     time for a whole row, doesn't say
 * @param issues what was left out, by reason
 */
public record ReadReport(
    List<Input> inputs,
    List<String> sentences,
    List<String> advice,
    List<ChannelQuality> channels,
    double[] lagS,
    IssueStore issues) {
  /**
   * A log file.
   *
   * @param file name as given, with forward slashes
   * @param sha256 of its bytes as they lie on disk, lower-case hexadecimal
   * @param rows rows with a readable time
   * @param first time of the earliest row
   * @param last time of the latest row
   */
  public record Input(String file, String sha256, long rows, Instant first, Instant last) {}

  public ReadReport {
    inputs = List.copyOf(inputs);
    sentences = List.copyOf(sentences);
    advice = List.copyOf(advice);
    channels = List.copyOf(channels);
  }
}
