package sagbook.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.wording.Words;

/**
 * A cell whose decision hangs on how wide a range is: the range holds the limit at which another
 * decision would follow, or there is no value at all.
 *
 * @param cell the cell
 * @param kind which of its quantities
 * @param limit the limit that the range holds, in the quantity's unit; NaN where there is no value
 * @param nearness distance from value to limit over the range's half-width, 0 to 1; 0 where there
 *     is no value
 * @param verdict on all cells
 */
record Doubt(CellVerdict cell, Kind kind, double limit, double nearness, BankVerdict verdict) {
  private static final Words WORDS = Words.english();

  /** Quantities that a test can make surer. */
  enum Kind {
    CAPACITY("capacity", CellEstimates::capacityRelative, 100),
    RESISTANCE("resistance", CellEstimates::resistanceRelative, 100),
    CHARGE("charge", CellEstimates::chargeOffsetPercent, 1);

    private final String key;

    @SuppressWarnings("ImmutableEnumChecker") // a function without state
    private final Function<CellEstimates, Estimate> of;

    private final double toPercent;

    Kind(String key, Function<CellEstimates, Estimate> of, double toPercent) {
      this.key = key;
      this.of = of;
      this.toPercent = toPercent;
    }

    /** Name in results.json. */
    String key() {
      return key;
    }

    Estimate of(CellEstimates cell) {
      return of.apply(cell);
    }

    /** Half-width of a cell's interval, % of the median cell's value or of nominal charge. */
    Estimate halfWidthPercent(CellEstimates cell) {
      return of(cell) instanceof Estimate.Known known
          ? exact(toPercent * known.halfWidth())
          : of(cell);
    }

    double percent(double value) {
      return toPercent * value;
    }

    static Estimate.Known exact(double value) {
      return new Estimate.Known(value, value, value);
    }
  }

  /**
   * The cell in doubt: what is suspected first, then what was not seen at all, then the decision
   * that is nearest to tipping; of equals the one that costs the string more. Where a cell's charge
   * is in doubt and its capacity was not seen, the test of capacity tells both.
   */
  static Optional<Doubt> of(BankVerdict verdict, Rules rules) {
    List<Doubt> all = new ArrayList<>();
    for (CellVerdict cell : verdict.cells()) {
      limits(rules, cell.finding())
          .forEach(limit -> limit.doubt(cell, verdict).ifPresent(all::add));
    }
    return all.stream()
        .min(
            Comparator.comparingInt(Doubt::urgency)
                .thenComparingDouble(Doubt::nearness)
                .thenComparingInt(d -> d.cell().rank()))
        .map(first -> all.stream().filter(first::isToldBy).findFirst().orElse(first));
  }

  private boolean isToldBy(Doubt other) {
    return kind == Kind.CHARGE
        && other.kind == Kind.CAPACITY
        && !other.isKnown()
        && other.cell.cell() == cell.cell();
  }

  /** All cells that have no value of that kind. */
  private List<Integer> unseen() {
    return verdict.cells().stream()
        .filter(c -> kind.of(c.estimates()) instanceof Estimate.Unknown)
        .map(CellVerdict::cell)
        .toList();
  }

  private int urgency() {
    boolean suspected = isKnown() || CellJudge.standsApart(cell.estimates(), estimates());
    return isOpen(cell) && suspected ? 0 : isKnown() ? 2 : 1;
  }

  private List<CellEstimates> estimates() {
    return verdict.cells().stream().map(CellVerdict::estimates).toList();
  }

  /** All cells that could not be judged. */
  private List<Integer> open() {
    return verdict.cells().stream().filter(Doubt::isOpen).map(CellVerdict::cell).toList();
  }

  private static boolean isOpen(CellVerdict cell) {
    return cell.finding() == Finding.INSUFFICIENT_EVIDENCE;
  }

  boolean isKnown() {
    return kind.of(cell.estimates()) instanceof Estimate.Known;
  }

  /** One limit of the rules. */
  private record Limit(Kind kind, double at, Predicate<Finding> matters) {
    Optional<Doubt> doubt(CellVerdict cell, BankVerdict verdict) {
      Estimate estimate = kind.of(cell.estimates());
      if (estimate instanceof Estimate.Known known) {
        double nearness = Math.abs(known.value() - at) / known.halfWidth();
        return known.low() < at && at < known.high()
            ? Optional.of(new Doubt(cell, kind, at, nearness, verdict))
            : Optional.empty();
      }
      return isOpen(cell) || mayHideWear(cell)
          ? Optional.of(new Doubt(cell, kind, Double.NaN, 0, verdict))
          : Optional.empty();
    }
  }

  /** Whether it can be told whether a cell is worn only once it is level with the others. */
  private static boolean mayHideWear(CellVerdict cell) {
    return cell.finding() == Finding.OUT_OF_BALANCE;
  }

  /** A cell that has its finding is in doubt only about what its own decision hangs on. */
  private static Stream<Limit> limits(Rules rules, Finding finding) {
    Predicate<Finding> open = f -> f == Finding.HEALTHY || f == Finding.INSUFFICIENT_EVIDENCE;
    return Stream.of(
            new Limit(
                Kind.CAPACITY,
                1 - rules.capacity().worth(),
                open.or(f -> f == Finding.OUT_OF_BALANCE)),
            new Limit(Kind.CAPACITY, 1 - rules.replaceCapacity(), f -> f == Finding.LOW_CAPACITY),
            new Limit(Kind.RESISTANCE, 1 + rules.resistance().worth(), open),
            new Limit(
                Kind.RESISTANCE, 1 + rules.replaceResistance(), f -> f == Finding.HIGH_RESISTANCE),
            new Limit(Kind.CHARGE, -rules.offsetPercent().worth(), open),
            new Limit(Kind.CHARGE, rules.offsetPercent().worth(), open))
        .filter(limit -> limit.matters().test(finding));
  }

  /** Which cell, and why it is the one. */
  String sentence() {
    String place = Integer.toString(cell.cell());
    if (!(kind.of(cell.estimates()) instanceof Estimate.Known known)) {
      return unknown(place);
    }
    boolean charge = kind == Kind.CHARGE;
    String which =
        isOpen(cell) && open().size() > 1
            ? WORDS.say("doubt.nearest", place, VerdictWords.cells(open()))
            : WORDS.say(cell.finding() == Finding.HEALTHY ? "doubt.healthy" : "doubt.cell", place);
    return WORDS.say(
        "doubt." + kind.key(),
        which,
        said(known.value()),
        said(known.low()),
        said(known.high()),
        charge ? Words.signed(limit, 1) : Words.fixed(100 * limit, 0),
        charge ? "" : WORDS.say("doubt." + kind.key() + (isJudged() ? ".replace" : ".found")));
  }

  /** Whether the cell has its finding, and only what to do about it is in doubt. */
  private boolean isJudged() {
    return cell.finding() == Finding.LOW_CAPACITY || cell.finding() == Finding.HIGH_RESISTANCE;
  }

  /** That there is no value: of this cell, of several, or of any. */
  private String unknown(String place) {
    if (mayHideWear(cell)) {
      return WORDS.say("doubt.level", place);
    }
    List<Integer> unseen = unseen();
    String of =
        unseen.size() == verdict.cells().size()
            ? "doubt.unknown.none."
            : unseen.size() > 1 ? "doubt.unknown.all." : "doubt.unknown.";
    return WORDS.say(of + kind.key(), unseen.size() > 1 ? VerdictWords.cells(unseen) : place);
  }

  private String said(double value) {
    return kind == Kind.CHARGE ? Words.signed(value, 1) : Words.fixed(100 * value, 1);
  }
}
