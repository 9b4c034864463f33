package sagbook.logfile;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.model.SampleBlock;

/** All rows of opened logs as text that can be compared. */
record Reading(List<String> rows, List<String> sentences, int rowsWithCurrent) {
  static Reading of(OpenedLogs logs) throws InputProblem {
    List<String> rows = new ArrayList<>();
    List<String> sentences = new ArrayList<>();
    int[] withCurrent = {0};
    for (String bank : logs.banks()) {
      if (!rows.isEmpty()) {
        rows.add("bank " + bank);
      }
      ReadReport report =
          logs.read(
              bank,
              block -> {
                for (int row = 0; row < block.rows(); row++) {
                  rows.add(text(block, row));
                  boolean known =
                      block.currentA().length > 0 && !Double.isNaN(block.currentA()[row]);
                  withCurrent[0] += known ? 1 : 0;
                }
              });
      sentences.addAll(report.sentences());
    }
    return new Reading(rows, sentences, withCurrent[0]);
  }

  String text() {
    return String.join("\n", rows);
  }

  private static String text(SampleBlock block, int row) {
    StringBuilder text = new StringBuilder();
    text.append(Instant.ofEpochMilli(Math.round(block.timeS()[row] * 1000)));
    text.append(" | ").append(values(block.voltageV(), row, 3));
    if (block.channels().hasTemperature()) {
      text.append(" | ").append(values(block.temperatureC(), row, 2));
    }
    if (block.channels().hasCurrent()) {
      text.append(" | ").append(number(block.currentA()[row], 2));
    }
    if (block.channels().hasBleed()) {
      text.append(" | ").append(values(block.bleedFraction(), row, 3));
    }
    return text.toString();
  }

  private static String values(double[][] columns, int row, int decimals) {
    List<String> values = new ArrayList<>();
    for (double[] column : columns) {
      values.add(number(column[row], decimals));
    }
    return String.join(" ", values);
  }

  private static String number(double value, int decimals) {
    if (Double.isNaN(value)) {
      return "-";
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
