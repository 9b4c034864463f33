package sagbook.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sagbook.account.Account;
import sagbook.account.BalancingAccount;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;
import sagbook.wording.Words;

/** What the page says of stress and of balancing; cell 5 is 4.2 ± 0.3 % ahead of the others. */
class AccountsTest {
  private static final CheckResult MONTH = InventedResult.month();

  private static Accounts accounts(Chemistry chemistry, double nearFullHours) {
    return accounts(chemistry, nearFullHours, new Estimate.Known(2, 1, 3));
  }

  private static Accounts accounts(Chemistry chemistry, double nearFullHours, Estimate needed) {
    BankResult b = MONTH.banks().get(0);
    BalancingAccount.Board board =
        new BalancingAccount.Board(
            20, 26, 0.9996, 1_780_000_000, false, new Estimate.Known(0, 0, 0));
    BalancingAccount balancing =
        new BalancingAccount(Collections.nCopies(16, board), nearFullHours, 49, needed);
    BankResult bled =
        new BankResult(
            b.bank(),
            chemistry,
            b.seriesCells(),
            b.from(),
            b.to(),
            b.evidence(),
            b.estimates(),
            new Account(b.account().stress(), Optional.of(balancing)),
            b.prospect(),
            b.verdict(),
            b.plan(),
            b.reading(),
            b.channels());
    return new Accounts(bled, MONTH.pack(), Words.english());
  }

  private static String said(Accounts accounts) {
    return String.join(" ", accounts.balancing()).replace('\u00a0', ' ');
  }

  @Test
  void nearlyAllIsSaidAsABoundAndNotToTheHundredthOfAPerCent() {
    String said = said(accounts(Chemistry.LFP, 38));
    assertTrue(said.startsWith("The boards bled 320 Ah in all, > 99 % of it near full"), said);
    assertEquals(
        "> 99 %", accounts(Chemistry.LFP, 38).boards().rows().get(0).get(3).replace('\u00a0', ' '));
  }

  /** By hand: 4.2 % of 280 Ah is 11.76 Ah, at 49 mA 240 h or 10 days; 0.3 % is 0.7 days. */
  @Test
  void howLongTheBoardsNeedForACellThatIsOutOfBalanceIsSaidInDays() {
    String said = said(accounts(Chemistry.LFP, 38));
    assertTrue(
        said.endsWith(
            "At that rate the boards need about 10.0 days (8.6 to 11.4) to bring cell 5 level with"
                + " the others."),
        said);
  }

  @Test
  void aDrainKnownFromBelowOnlyIsComparedByTheLeastThatItMayBe() {
    String within = said(accounts(Chemistry.LFP, 38, new Estimate.Known(30, 20, 30).open()));
    assertTrue(within.contains("is 20 mA at the least; as its upper end is not known"), within);
    String beyond = said(accounts(Chemistry.LFP, 38, new Estimate.Known(90, 60, 90).open()));
    assertTrue(beyond.contains("is 60 mA at the least: they may not keep up"), beyond);
  }

  /** A sloping curve has no plateau: a board sees everywhere which cell is ahead. */
  @Test
  void ofASlopingCurveItIsNotSaidThatBleedingBelowFullIsWasted() {
    assertTrue(said(accounts(Chemistry.LFP, 0)).contains("wasted"));
    String sloping = said(accounts(Chemistry.NMC, 0));
    assertFalse(sloping.contains("wasted"), sloping);
    assertFalse(sloping.contains("only there"), sloping);
  }

  @Test
  void whatNeverHappenedIsCalledNever() {
    List<List<String>> rows = accounts(Chemistry.LFP, 38).stress().rows();
    assertEquals(
        "never",
        rows.stream()
            .filter(row -> row.get(0).replace('\u00a0', ' ').equals("Charged below 0 °C"))
            .findFirst()
            .orElseThrow()
            .get(1));
  }
}
