package sagbook.report.chart;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import sagbook.model.PackDescription;
import sagbook.record.BankResult;
import sagbook.verdict.CellVerdict;
import sagbook.wording.Words;

/**
 * What a plate is made from.
 *
 * @param bank results of the bank
 * @param pack its description
 * @param picks cells to pick out
 * @param words wording
 */
record Subject(BankResult bank, PackDescription pack, Picks picks, Words words) {

  int cells() {
    return bank.seriesCells();
  }

  CellVerdict verdict(int cell) {
    return bank.verdict().cells().get(cell - 1);
  }

  /** "Cell 1 3.42 V; cell 2 3.41 V" from a head sentence and one text a cell. */
  String inWords(String head, List<String> items) {
    return items.stream().collect(Collectors.joining("; ", head + " ", "."));
  }

  /** The middle of the finite values; NaN when there is none. */
  static double median(double[] values) {
    double[] sorted = Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
    if (sorted.length == 0) {
      return Double.NaN;
    }
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
