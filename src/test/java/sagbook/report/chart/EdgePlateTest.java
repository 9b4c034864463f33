package sagbook.report.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import sagbook.evidence.Edge;
import sagbook.evidence.Evidence;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;
import sagbook.wording.Words;

final class EdgePlateTest {
  private final CheckResult month = InventedResult.month();
  private final BankResult bank = month.banks().get(0);

  @Test
  void oneWildAnswerLeavesTheFrameInsteadOfSettingItsScale() {
    Plate calm = plate(steps(1));
    Plate wild = plate(steps(20));
    assertFalse(calm.caption().contains("leave"), calm.caption());
    assertTrue(wild.caption().contains("leave the frame"), wild.caption());
    assertEquals(top(calm), top(wild), 0.1 * top(calm));
  }

  @Test
  void theTableStillHoldsTheWildAnswer() {
    double calm = lastAnswer(plate(steps(1)));
    assertEquals(20, lastAnswer(plate(steps(20))) / calm, 1.5);
  }

  /** Twelve steps alike but for a few per cent, and a last one so many times as large. */
  private List<Edge> steps(double last) {
    Edge clean = bank.evidence().edges().stream().filter(Edge::clean).findFirst().orElseThrow();
    List<Edge> steps = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      steps.add(scaled(clean, 0.95 + 0.01 * i));
    }
    steps.add(scaled(clean, last));
    return steps;
  }

  /** The same step with every answer so many times as large. */
  private static Edge scaled(Edge edge, double by) {
    double[][] volts =
        Arrays.stream(edge.voltageV())
            .map(cell -> Arrays.stream(cell).map(v -> cell[0] + by * (v - cell[0])).toArray())
            .toArray(double[][]::new);
    return new Edge(
        edge.timeS(), edge.offsetS(), edge.currentA(), volts, edge.stepA(), edge.clean());
  }

  /** What cell 1 answered to the last step of the table. */
  private static double lastAnswer(Plate plate) {
    List<List<String>> rows = plate.table().rows();
    return Double.parseDouble(rows.get(rows.size() - 1).get(2));
  }

  private Plate plate(List<Edge> edges) {
    Evidence e = bank.evidence();
    Evidence evidence =
        new Evidence(
            e.channels(),
            e.firstS(),
            e.lastS(),
            e.rows(),
            e.cadenceS(),
            e.wanderAhInADay(),
            e.thinned(),
            e.basis(),
            e.steps(),
            e.onsets(),
            e.toldLagS(),
            edges,
            e.turns(),
            e.stress(),
            e.temperatureStuckHours());
    BankResult with =
        new BankResult(
            bank.bank(),
            bank.chemistry(),
            bank.seriesCells(),
            bank.from(),
            bank.to(),
            evidence,
            bank.estimates(),
            bank.account(),
            bank.prospect(),
            bank.verdict(),
            bank.plan(),
            bank.reading(),
            bank.channels());
    Picks picks = Picks.of(bank.verdict().cells());
    return EdgePlate.of(new Subject(with, month.pack(), picks, Words.english())).orElseThrow();
  }

  /** The upper end of the vertical axis. */
  private static double top(Plate plate) {
    String ends = Jsoup.parse(plate.svg()).expectFirst("svg.wide").attr("data-y");
    return Double.parseDouble(ends.substring(ends.indexOf(' ') + 1));
  }
}
