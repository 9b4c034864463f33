package sagbook.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;
import sagbook.wording.Words;

/** Words and numbers as they stand on the page, not how they look. */
final class ReportPageTest {
  private static final String HOSTILE = "<script>alert('x')</script>\u202e=1+1 ${7*7} \" ' &amp;";

  private static Stream<CheckResult> results() {
    return Stream.of(
        InventedResult.month(),
        InventedResult.healthy(),
        InventedResult.withoutCurrent(),
        InventedResult.twoBanks(),
        InventedResult.nothing(),
        InventedResult.named(HOSTILE, HOSTILE, HOSTILE));
  }

  private static Document page(CheckResult result) {
    return Jsoup.parse(ReportPage.html(result, Words.english()));
  }

  /** What is read, with ordinary spaces. */
  private static List<String> texts(Elements elements) {
    return elements.eachText().stream().map(text -> text.replace('\u00a0', ' ')).toList();
  }

  @Test
  void beginsWithTheOneSentence() {
    Document page = page(InventedResult.month());
    assertEquals("Boathouse battery", page.select("h1").text());
    assertEquals(
        "Cell 12 limits the battery; replacing it would add about 30 Ah; cells 5 and 7 need a"
            + " hand, the others are fine.",
        page.expectFirst("h1 ~ *").text());
  }

  @Test
  void answersTheKeepersQuestions() {
    Document page = page(InventedResult.month());
    assertEquals(
        List.of(
            "Is it fine? Not quite. Something needs attention before high loads are used again.",
            "What is wrong? Cell 12: it has lost capacity. Were all other cells alike and level,"
                + " it would cost the battery 33 Ah (27 to 39). Cell 7: one of its joints seems to conduct badly. That costs"
                + " voltage under load, hardly any charge: at the highest current seen it sags by"
                + " 39.8 mV (38.3 to 41.3), the middle cell by 20.9 mV (19.4 to 22.4). Cell 5: it is"
                + " out of balance with the others."
                + " Were all other cells alike and level, it would cost the battery 11.7 Ah"
                + " (10.0 to 13.4).",
            "What does that buy? Bringing all cells to full together: about 9.0 Ah more"
                + " (5.3 to 11.4). That is 0.47 kWh (0.27 to 0.59), or 44 min (25 to 55), at a usual"
                + " evening’s load. Mending the joint at cell 7: hardly any charge, but 18.6 mV"
                + " (17.3 to 19.9) less sag at 64.2 A."
                + " Replacing cell 5: no more than bringing it level with the others does."
                + " Replacing cell 12: about 29 Ah more (3 to 33). That is 1.5 kWh (0.2 to 1.7), or"
                + " 2.4 h (0.3 to 2.7), at a usual evening’s load. The description names no spare, so one of nominal 280 Ah"
                + " was reckoned with.",
            "How sure is that? 1 of 16 cells could not be judged: the log does not show enough of"
                + " it. Each range is meant to hold the truth in 95 of 100 cases."),
        texts(page.select(".answers > div:not(.todo)")));
    assertEquals(
        List.of(
            "236 Ah (232 to 240) from the first full to the first empty cell.",
            "Brought to full together, the cells would give 243 Ah (238 to 248).",
            "At a usual evening’s load that is 12.1 kWh (11.8 to 12.5), or 18.9 h (18.3 to 19.5).",
            "A usual evening here is 640 W: the median power while the battery discharges between"
                + " 17:00 and 23:00.",
            "Charging ends because cell 5 is full first.",
            "Discharging ends because cell 12 is empty first."),
        texts(page.expectFirst(".ranks .whole").select("li")));
  }

  @Test
  void aBatteryWithoutFaultIsNotAdvisedToHaveCellsReplaced() {
    Document page = page(InventedResult.healthy());
    List<String> answers = texts(page.select(".answers > div"));
    assertEquals("What to do now? Nothing to do now.", answers.get(2));
    assertEquals(
        "What does that buy? Nothing has to be done. What changes would buy stands in the table of"
            + " changes; none of them is advised.",
        answers.get(3));
    assertEquals(0, page.select(".picked").size());
  }

  /** Replacing it buys no charge, but it is what the finding asks about. */
  @Test
  void theTableOfChangesNamesACellThatResistsTooMuch() {
    List<String> changes =
        texts(page(InventedResult.resistive(9)).select("td:first-child, th[scope=row]"));
    assertTrue(
        changes.contains("Replacing cell 9 (not advised: only watch cell 9 for now)"),
        changes.toString());
    assertFalse(
        texts(page(InventedResult.healthy()).select("td:first-child, th[scope=row]")).stream()
            .anyMatch(change -> change.startsWith("Replacing cell 9")));
  }

  private static String changes(CheckResult result) {
    Element part = page(result).select(".ranks .whole").get(1);
    return part.text().replace('\u00a0', ' ');
  }

  /** A tired reader once took a row of the table for advice to replace a healthy cell. */
  @Test
  void theTableOfChangesSaysOfEachReplacementWhetherItIsAdvised() {
    String month = changes(InventedResult.month());
    assertTrue(
        month.contains("Of the replacements in this table only that of cell 12 is advised"), month);
    assertTrue(month.contains("Replacing cell 12 "), month);
    assertFalse(month.contains("Replacing cell 12 (not advised"), month);
    assertTrue(month.contains("(not advised: bring cell 5 level first)"), month);
    String healthy = changes(InventedResult.healthy());
    assertTrue(healthy.contains("No cell needs to be replaced"), healthy);
    assertTrue(healthy.contains("Replacing cell 12 (not advised: cell 12 is healthy)"), healthy);
    String leaking = changes(InventedResult.leakingUnseen(12));
    assertTrue(leaking.contains("No cell is advised to be replaced now"), leaking);
    assertTrue(leaking.contains("(not advised: find what drains cell 12 first)"), leaking);
    assertTrue(leaking.contains("every single cell and every pair"), leaking);
  }

  /** Cell 3 could not be judged: it is to be measured beside what is to be done for the others. */
  @Test
  void whatCouldNotBeJudgedIsToBeMeasuredFirst() {
    String todo = texts(page(InventedResult.month()).select(".answers > .todo")).get(0);
    assertTrue(
        todo.contains(
            "Measure first, before you change or buy anything: whether cell 3 is sound, this log"
                + " can’t tell. How stands below, under “What to do next month?”"),
        todo);
  }

  /** The noun and the sentence once stood under one key. */
  @Test
  void aTestOfChargeSaysWhatItBuysOfWhat() {
    assertEquals("charge against its neighbours", Words.english().say("plan.quantity.charge"));
  }

  @Test
  void aBadJointIsSaidToCostVoltageAndNotTheChargeThatItsCellLacks() {
    String wrong = texts(page(InventedResult.month()).select(".answers > div")).get(1);
    String joint = wrong.substring(wrong.indexOf("Cell 7:"), wrong.indexOf("Cell 5:"));
    assertTrue(joint.contains("sags by 39.8 mV (38.3 to 41.3), the middle cell by"), joint);
    assertFalse(joint.contains("Ah"), joint);
  }

  /** A bare number looks surer than it is; what a range is given for once is a reading. */
  @Test
  void everyEstimateOnTheFirstPageHasItsRange() {
    String answers = String.join(" ", texts(page(InventedResult.month()).select(".answers")));
    assertTrue(answers.contains("sags by 39.8 mV (38.3 to 41.3), the middle cell by"), answers);
    assertTrue(answers.contains("0.47 kWh (0.27 to 0.59), or 44 min (25 to 55)"), answers);
    String gives = String.join(" ", texts(page(InventedResult.month()).select(".ranks .whole li")));
    assertTrue(gives.contains("12.1 kWh ("), gives);
    assertTrue(gives.contains(" h ("), gives);
  }

  @Test
  void aLeakBesideUnloggedBleedingHasNoUpperEnd() {
    String sheet =
        String.join(" ", texts(page(InventedResult.leakingUnseen(4)).select(".sheets tr")));
    assertTrue(sheet.contains("Self-discharge ≥ 0.4 mA"), sheet);
  }

  @Test
  void tellsOnceWhatIsKnownOfNoCell() {
    Document page = page(InventedResult.withoutCurrent());
    String lead = "Not known of any cell: Capacity (";
    assertEquals(1, texts(page.select(".open")).stream().filter(t -> t.startsWith(lead)).count());
    assertEquals(0, page.select(".sheet .estimates th:matchesOwn(^Capacity$)").size());
    assertEquals(List.of(), page(InventedResult.month()).select(".open").eachText());
  }

  @Test
  void stepsAndNoiseOfVoltagesAreInMillivolts() {
    List<String> cells = texts(page(InventedResult.month()).select("#bank1-quality td"));
    assertTrue(cells.stream().anyMatch(cell -> cell.matches("[\\d.]+ mV")), cells.toString());
    assertTrue(cells.stream().noneMatch(cell -> cell.matches("[\\d.]+ V")), cells.toString());
  }

  @Test
  void limitsAndRulesStandWithTheDigitsTheyWereGivenWith() {
    Document page = page(InventedResult.month());
    List<String> values = page.select("#method table tbody tr td:nth-child(2)").eachText();
    assertTrue(values.containsAll(List.of("3", "18", "1.8", "500")), values.toString());
    assertTrue(texts(page(InventedResult.nothing()).select(".facts dd")).contains("65 Ah"));
  }

  @ParameterizedTest
  @MethodSource("results")
  void noLineEndsWithinARangeAndThereIsOneApostrophe(CheckResult result) {
    Document page = page(result);
    page.select("bdi, th, style, script, svg, h1").remove();
    String text = page.body().wholeText();
    assertFalse(text.matches("(?s).*\\([\u2212\\d.]+ to .*"), text);
    assertFalse(text.matches("(?s).*\\d (%|mV|Ah|mΩ|kWh|°C)[ ,.;)].*"), text);
    assertFalse(text.matches("(?s).*\\p{L}'\\p{L}.*"), text);
  }

  @Test
  void ranksTheCellsWithRangesAndReasons() {
    Document page = page(InventedResult.month());
    List<String> rows = texts(page.select(".ranking tbody tr"));
    assertEquals(16, rows.size());
    assertEquals(
        "1 cell 12 low capacity 243239 to 247 0.3860.362 to 0.410 1.40.8 to 2.0 3327 to 39",
        rows.get(0));
    assertEquals(
        "4 cell 3 can’t be told yet n/aa 0.3140.290 to 0.338 0.4\u22120.2 to 0.9 n/aa",
        rows.get(3));
    assertEquals(
        List.of("a Cell 3 was never seen near empty."), page.select(".notes li").eachText());
  }

  @Test
  void platesSayWhatTheyShow() {
    assertEquals(
        List.of(
            "At the end of charge cell 5 stands at 3.62 V, 274 mV above the middle cell.",
            "At the end of discharge cell 12 stands at 2.57 V, 613 mV below the middle" + " cell.",
            "Charging ends when cell 5 is full. Discharging ends when cell 12 is empty.",
            "Cell 12 holds 243 Ah, the middle cell 276 Ah.",
            "Cell 7 shows 0.620 m\u03a9, the middle cell 0.324 m\u03a9; about"
                + " 0.290 m\u03a9 of it answers at once, the mark of a joint.",
            "Cell 7 answers an ampere with 0.52 m\u03a9, the middle cell with 0.27 m\u03a9,"
                + " 10 s after the first reading that shows it.",
            "The cells were between 12.2 and 26.8 °C; no place is clearly warmer or colder.",
            "Cell 7 has the highest resistance and is as warm as the rest: 19.3 °C, the middle cell"
                + " 19.5 °C.",
            "Cells were outside their limits: up to 1.2 h above the upper voltage."),
        texts(page(InventedResult.month()).select(".plate h3")).stream()
            .map(text -> text.replaceFirst("Plate \\d ", ""))
            .toList());
  }

  @Test
  void saysWhichPlatesCannotBeDrawnAndDrawsTheRestByTime() {
    Document page = page(InventedResult.withoutCurrent());
    assertTrue(
        page.select("[data-kind=charge-end] .plot").text().contains("Time until the end, h"));
    assertTrue(page.select("[data-kind=resistance-relative]").hasText());
    assertTrue(page.select("[data-kind=capacity-relative]").hasText());
  }

  @ParameterizedTest
  @MethodSource("results")
  void everyPlateHasItsNumbersInWordsAndInATable(CheckResult result) {
    for (Element plate : page(result).select(".plate")) {
      Element picture = plate.expectFirst("svg[role=img]");
      String heard = picture.attr("aria-label");
      String title = plate.expectFirst("h3").ownText().strip().replace('\u00a0', ' ');
      assertTrue(heard.replace('\u00a0', ' ').startsWith(title), heard);
      assertTrue(heard.length() > title.length() + 50, heard);
      assertTrue(plate.select("tbody td").size() >= result.pack().seriesCells() - 1, title);
      assertFalse(plate.select("figcaption").text().isBlank());
      assertEquals(heard, plate.expectFirst("svg.narrow").attr("aria-label"));
    }
  }

  @ParameterizedTest
  @MethodSource("results")
  void needsNothingFromOutside(CheckResult result) {
    Document page = page(result);
    assertEquals(0, page.select("[src], link, [style], [onclick], object, embed, iframe").size());
    for (Element link : page.select("[href]")) {
      String href = link.attr("href");
      assertTrue(href.startsWith("#"), href);
      assertEquals(1, page.select("[id=" + href.substring(1) + "]").size(), href);
    }
    assertEquals(1, page.select("script").size());
    assertFalse(page.select("style").html().contains("url("));
  }

  @ParameterizedTest
  @MethodSource("results")
  void headingsDescendStepByStepAndIdsAreUnique(CheckResult result) {
    Document page = page(result);
    int before = 0;
    for (Element heading : page.select("h1, h2, h3, h4")) {
      int level = heading.tagName().charAt(1) - '0';
      assertTrue(level <= before + 1, heading.text());
      before = level;
    }
    Set<String> ids = new HashSet<>();
    for (Element element : page.select("[id]")) {
      assertTrue(ids.add(element.id()), element.id());
    }
  }

  @Test
  void showsTextFromOutsideAsText() {
    Document page = page(InventedResult.named(HOSTILE, "b", HOSTILE));
    String shown = "<script>alert('x')</script><U+202E>=1+1 ${7*7} \" ' &amp;";
    assertEquals(shown, page.select("h1").text());
    assertEquals(shown, page.select("#inputs tbody th").text());
    assertEquals(1, page.select("script").size());
    assertFalse(page.html().contains("\u202e"));
  }

  @Test
  void saysWhyNothingCanBeDrawnFromNothing() {
    Document page = page(InventedResult.nothing());
    assertEquals(0, page.select(".plate").size());
    assertEquals(9, page.select("#bank1-plates li").size());
    assertEquals("a The log is empty.", page.select(".notes li").text());
    assertTrue(page.text().contains("2 of 2 cells could not be judged"));
    assertTrue(page.text().contains("whether cells 1 and 2 are sound it can’t tell"));
    assertTrue(page.text().contains("Measure first, before you change or buy anything"));
    assertFalse(page.text().contains("Nothing to do now"));
  }

  @Test
  void namesTheBankWhereThereAreSeveral() {
    Document page = page(InventedResult.twoBanks());
    List<String> headings = new ArrayList<>(page.select("h2").eachText());
    assertTrue(headings.contains("Plates: bank north"), headings.toString());
    assertTrue(headings.contains("Plates: bank south"), headings.toString());
    assertEquals(2, page.select(".headline").size());
  }

  @ParameterizedTest
  @MethodSource("results")
  void staysSmall(CheckResult result) {
    int bytes = ReportPage.html(result, Words.english()).length();
    assertTrue(bytes < 2_000_000 * result.banks().size(), String.format(Locale.ROOT, "%d", bytes));
  }
}
