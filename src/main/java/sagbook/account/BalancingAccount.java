package sagbook.account;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Evidence;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.wording.Words;

/**
 * What balancing did.
 *
 * @param boards one a cell, cell 1 first
 * @param nearFullHours time near full, when bleeding helps, h
 * @param mostMilliamp what a board could bleed on average over the log if it ran at full level
 *     whenever the string was near full, mA
 * @param neededMilliamp largest self-discharge of a cell above the string's median, which all other
 *     boards have to bleed to stay level with it, mA
 */
public record BalancingAccount(
    List<Board> boards, double nearFullHours, double mostMilliamp, Estimate neededMilliamp) {
  private static final Words WORDS = Words.english();

  /** A level below this is off. */
  private static final double ON = 0.02;

  /** A level below this while it runs is held back. */
  private static final double WHOLE = 0.9;

  /** A board that is warmer than this when held back is likely held back by its warmth, K. */
  private static final double WARMER_K = 2;

  private static final double LEAST_HOURS = 0.5;

  /**
   * One board.
   *
   * @param bledAh charge bled, Ah
   * @param hours time it bled, h
   * @param nearFullShare share of the bled charge while the string was near full, 0 to 1; the rest
   *     was bled where cells can't be told apart and was wasted
   * @param lastS when it last bled, s since 1970; NaN for never
   * @param isHeldBackByWarmth whether it ran below full level for half an hour or more, with its
   *     cell warmer then than at full level
   * @param hoursToLevel how long it has to bleed at full level to bring its cell down to the
   *     string's median; 0 when it is not ahead, unknown where the offset is
   */
  public record Board(
      double bledAh,
      double hours,
      double nearFullShare,
      double lastS,
      boolean isHeldBackByWarmth,
      Estimate hoursToLevel) {}

  public BalancingAccount {
    boards = List.copyOf(boards);
  }

  /**
   * Whether the boards can keep up with the largest drain; empty when the drain is unknown, or
   * known from below only and not beyond what they can bleed.
   */
  public Optional<Boolean> keepsUp() {
    return neededMilliamp instanceof Estimate.Known needed
            && !(needed.isOpen() && mostMilliamp >= needed.low())
        ? Optional.of(mostMilliamp >= needed.high())
        : Optional.empty();
  }

  /** Current through a bleed resistor, A (Ohm's law). */
  public static double ampere(double volt, double ohm) {
    return volt / ohm;
  }

  /** The account, or nothing when no bleed level was logged. */
  public static Optional<BalancingAccount> of(
      Evidence evidence, BankEstimates estimates, PackDescription pack) {
    ThinnedRecord record = evidence.thinned();
    if (!record.hasBleed()) {
      return Optional.empty();
    }
    FullState full = new FullState(record, pack);
    double allS = 0;
    double nearS = 0;
    for (int r = 0; r < record.rows(); r++) {
      allS += record.seconds()[r];
      nearS += full.isNear(r) ? record.seconds()[r] : 0;
    }
    double whole = ampere(pack.limits().cellFullVoltage(), pack.bleedOhm());
    List<Board> boards = new ArrayList<>();
    for (CellEstimates cell : estimates.cells()) {
      boards.add(board(record, cell, full, pack, whole));
    }
    return Optional.of(
        new BalancingAccount(
            boards,
            nearS / 3600,
            allS > 0 ? 1000 * whole * nearS / allS : 0,
            needed(estimates.cells())));
  }

  private static Board board(
      ThinnedRecord record,
      CellEstimates cell,
      FullState full,
      PackDescription pack,
      double whole) {
    int c = cell.cell() - 1;
    double bled = 0;
    double near = 0;
    double seconds = 0;
    double last = Double.NaN;
    Mean heldBack = new Mean();
    Mean free = new Mean();
    for (int r = 0; r < record.rows(); r++) {
      double level = record.bleedFraction()[c][r];
      double volt = record.voltageV()[c][r];
      if (level > ON && volt > 0) {
        double ah = level * ampere(volt, pack.bleedOhm()) * record.seconds()[r] / 3600;
        bled += ah;
        near += full.isNear(r) ? ah : 0;
        seconds += record.seconds()[r];
        last = record.timeS()[r];
        double celsius = record.hasTemperature() ? record.temperatureC()[c][r] : Double.NaN;
        (level < WHOLE ? heldBack : free).add(celsius, record.seconds()[r]);
      }
    }
    boolean warm = heldBack.hours() >= LEAST_HOURS && heldBack.value() > free.value() + WARMER_K;
    double nominal = pack.nominalCapacityAh();
    Estimate toLevel = cell.chargeOffsetPercent().map(p -> Math.max(0, p) * nominal / 100 / whole);
    return new Board(bled, seconds / 3600, bled > 0 ? near / bled : 0, last, warm, toLevel);
  }

  private static Estimate needed(List<CellEstimates> cells) {
    Estimate most = Estimate.unknown(WORDS.say("unknown.no-drain"));
    for (CellEstimates cell : cells) {
      if (cell.selfDischargeMilliamp() instanceof Estimate.Known drain
          && !(most instanceof Estimate.Known known && known.value() >= drain.value())) {
        most = drain.map(milliamp -> Math.max(0, milliamp));
      }
    }
    return most;
  }

  /** A mean weighted by time; NaN values are left out. */
  private static final class Mean {
    private double sum;
    private double seconds;

    void add(double value, double forS) {
      if (!Double.isNaN(value)) {
        sum += value * forS;
        seconds += forS;
      }
    }

    double value() {
      return sum / seconds;
    }

    double hours() {
      return seconds / 3600;
    }
  }
}
