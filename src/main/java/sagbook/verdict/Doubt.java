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
 * @param unseen all cells that have no value of that kind
 * @param open all cells that could not be judged
 */
record Doubt(
    CellVerdict cell,
    Kind kind,
    double limit,
    double nearness,
    List<Integer> unseen,
    List<Integer> open) {
  private static final Words WORDS = Words.english();

  Doubt {
    unseen = List.copyOf(unseen);
    open = List.copyOf(open);
  }

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

  private static List<Integer> unseen(BankVerdict verdict, Kind kind) {
    return verdict.cells().stream()
        .filter(c -> kind.of(c.estimates()) instanceof Estimate.Unknown)
        .map(CellVerdict::cell)
        .toList();
  }

  private int urgency() {
    return isOpen(cell) && isKnown() ? 0 : isKnown() ? 2 : 1;
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
      List<Integer> unseen = unseen(verdict, kind);
      List<Integer> open =
          verdict.cells().stream().filter(Doubt::isOpen).map(CellVerdict::cell).toList();
      Estimate estimate = kind.of(cell.estimates());
      if (estimate instanceof Estimate.Known known) {
        double nearness = Math.abs(known.value() - at) / known.halfWidth();
        return known.low() < at && at < known.high()
            ? Optional.of(new Doubt(cell, kind, at, nearness, unseen, open))
            : Optional.empty();
      }
      return isOpen(cell) || mayHideWear(cell)
          ? Optional.of(new Doubt(cell, kind, Double.NaN, 0, unseen, open))
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
      return mayHideWear(cell)
          ? WORDS.say("doubt.level", place)
          : unseen.size() == 1
              ? WORDS.say("doubt.unknown." + kind.key(), place)
              : WORDS.say("doubt.unknown.all." + kind.key(), VerdictWords.cells(unseen));
    }
    boolean charge = kind == Kind.CHARGE;
    String which =
        isOpen(cell) && open.size() > 1
            ? WORDS.say("doubt.nearest", place, VerdictWords.cells(open))
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

  private String said(double value) {
    return kind == Kind.CHARGE ? Words.signed(value, 1) : Words.fixed(100 * value, 1);
  }
}
