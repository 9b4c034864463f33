package sagbook.report.chart;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.report.words.Numbers;

/**
 * The cells' voltages towards an end of charge or of discharge, laid over each other by the charge
 * that is left until the end (by time where current is not logged). All cells of a string share one
 * current, so a cell that turns early is fuller or smaller than the others; which of the two shows
 * at the other end.
 */
final class TurnPlate {
  private static final double SHOWN_SHARE = 0.2;
  private static final double SHOWN_HOURS = 4;
  private static final double TURNED_SHARE = 0.01;
  private static final double ENOUGH_SHARE = 0.4;
  private static final double ALIKE_V = 0.015;
  private static final double SAME_EXTREME_V = 0.01;
  private static final int HEIGHT = 350;

  /** A cell that stays behind is named where it does so by this many times what the first leads. */
  private static final double FAR_BEHIND = 2;

  /** So many cells and no more are all named beside their curves. */
  private static final int FEW = 6;

  private final Subject subject;
  private final ThinnedRecord record;
  private final Turn turn;
  private final String key;
  private final boolean counted;
  private final double[] endV;
  private final double middleV;
  private final double[] leads;

  private TurnPlate(Subject subject, Turn turn) {
    this.subject = subject;
    this.record = subject.bank().evidence().thinned();
    this.turn = turn;
    this.key = turn.charge() ? "plate.charge-end" : "plate.discharge-end";
    this.counted = isCounted(record, turn);
    this.endV = new double[record.cells()];
    for (int i = 0; i < endV.length; i++) {
      endV[i] = record.voltageV()[i][turn.toRow()];
    }
    this.middleV = Subject.median(endV);
    this.leads = new double[endV.length];
    for (int i = 0; i < endV.length; i++) {
      leads[i] = lead(i);
    }
  }

  /** The plate of the end that goes furthest, the latest of those that go as far. */
  static Optional<Plate> of(Subject subject, boolean charge) {
    ThinnedRecord record = subject.bank().evidence().thinned();
    int sign = charge ? 1 : -1;
    Turn best = null;
    for (Turn turn : subject.bank().evidence().turns()) {
      if (turn.charge() != charge || turn.toRow() - turn.fromRow() < 3) {
        continue;
      }
      boolean better =
          best == null
              || (isCounted(record, turn) == isCounted(record, best)
                  ? sign * turn.extremeVoltageV() > sign * best.extremeVoltageV() - SAME_EXTREME_V
                  : isCounted(record, turn));
      if (better) {
        best = turn;
      }
    }
    return best == null ? Optional.empty() : Optional.of(new TurnPlate(subject, best).plate());
  }

  private static boolean isCounted(ThinnedRecord record, Turn turn) {
    return Double.isFinite(record.chargeAh()[turn.fromRow()])
        && Double.isFinite(record.chargeAh()[turn.toRow()]);
  }

  private Plate plate() {
    String title = title();
    String when =
        subject
            .words()
            .time(
                Instant.ofEpochSecond(Math.round(record.timeS()[turn.toRow()])),
                subject.pack().timezone());
    String caption = subject.words().say(key + (counted ? ".caption" : ".caption.time"), when);
    DataTable table = table();
    List<String> items = new ArrayList<>();
    for (List<String> row : table.rows()) {
      items.add(subject.words().say("plate.turn.item", row.get(0), row.get(1), row.get(2)));
    }
    String alternative = subject.inWords(subject.words().say(key + ".alternative"), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    return new Plate(key.substring(6), title, caption, svg, alternative, table);
  }

  /** Charge (or hours) still to come at a row, as a negative number. */
  private double left(int row) {
    int end = turn.toRow();
    return counted
        ? -Math.abs(record.chargeAh()[end] - record.chargeAh()[row])
        : (record.timeS()[row] - record.timeS()[end]) / 3600;
  }

  private Plot plot() {
    double most = counted ? SHOWN_SHARE * subject.pack().nominalCapacityAh() : SHOWN_HOURS;
    int from = start(most);
    int rows = turn.toRow() - from + 1;
    double[] x = new double[rows];
    double leftmost = -1e-3;
    for (int i = 0; i < rows; i++) {
      x[i] = left(from + i);
      leftmost = Math.min(leftmost, x[i]);
    }
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (float[] voltages : record.voltageV()) {
      for (int row = from; row <= turn.toRow(); row++) {
        if (Float.isFinite(voltages[row])) {
          low = Math.min(low, voltages[row]);
          high = Math.max(high, voltages[row]);
        }
      }
    }
    Axis across = Axis.countdown(words(counted ? "axis.ah-left" : "axis.hours-left"), leftmost, 7);
    Axis up = Axis.around(words("axis.cell-voltage"), low, high, 7);
    Plot.Sketch sketch = new Plot.Sketch();
    for (int cell = 1; cell <= record.cells(); cell++) {
      curve(sketch, cell, x, from, up, across);
    }
    return sketch.on(across, up);
  }

  /**
   * First row to show: so much before the end, but not beyond a spell in which the current went the
   * other way, unless that is close to the end.
   */
  private int start(double most) {
    int from = turn.toRow();
    double furthest = 0;
    while (from > turn.fromRow() && left(from - 1) >= -most) {
      double next = left(from - 1);
      boolean back = next > furthest + most * TURNED_SHARE;
      if (back && -furthest > most * ENOUGH_SHARE) {
        break;
      }
      furthest = Math.min(furthest, next);
      from--;
    }
    return from;
  }

  private void curve(Plot.Sketch sketch, int cell, double[] x, int from, Axis up, Axis across) {
    List<Integer> valid = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (Float.isFinite(record.voltageV()[cell - 1][from + i])) {
        valid.add(i);
      }
    }
    double[] xs = valid.stream().mapToDouble(i -> x[i]).toArray();
    double[] ys = valid.stream().mapToDouble(i -> record.voltageV()[cell - 1][from + i]).toArray();
    if (xs.length == 0) {
      return;
    }
    int[] kept = Thinning.kept(across.onPaper(xs, 500), up.onPaper(ys, 330), 0.25);
    Ink ink = subject.picks().ink(Role.CURVE, cell);
    String name = subject.words().cell(cell);
    sketch.line(ink, Thinning.take(xs, kept), Thinning.take(ys, kept), name);
    if (ink.pick() > 0) {
      sketch.note(Plot.Place.MARGIN, 0, ys[ys.length - 1], name, true);
    } else if (cell == turn.extremeCell() || cell == furthest() || record.cells() <= FEW) {
      sketch.note(Plot.Place.MARGIN, 0, ys[ys.length - 1], name, false);
    }
  }

  /**
   * How long before the end a cell passed the voltage at which the middle cell ends, in Ah or h;
   * NaN when it did not.
   */
  private double lead(int index) {
    float[] voltages = record.voltageV()[index];
    int sign = turn.charge() ? 1 : -1;
    int row = turn.toRow();
    if (!(sign * voltages[row] >= sign * middleV)) {
      return Double.NaN;
    }
    while (row > turn.fromRow() && sign * voltages[row - 1] >= sign * middleV) {
      row--;
    }
    return -left(row);
  }

  /** States the cell that is furthest ahead, or else the one that stays behind. */
  private String title() {
    int ahead = turn.extremeCell();
    double aheadV = Math.abs(endV[ahead - 1] - middleV);
    int furthest = furthest();
    double furthestV = Math.abs(endV[furthest - 1] - middleV);
    if (!(furthestV >= ALIKE_V)) {
      return subject.words().say(key + ".title.alike", millivolts(furthestV));
    }
    boolean behind = furthestV > FAR_BEHIND * aheadV;
    int cell = behind ? furthest : ahead;
    String volts = Numbers.with(Numbers.text(endV[cell - 1], 2), "V");
    return subject
        .words()
        .say(
            key + (behind ? ".title.behind" : ".title"),
            subject.words().cell(cell),
            volts,
            millivolts(behind ? furthestV : aheadV));
  }

  /** The cell furthest from the middle cell. */
  private int furthest() {
    int furthest = turn.extremeCell();
    for (int cell = 1; cell <= endV.length; cell++) {
      double apart = Math.abs(endV[cell - 1] - middleV);
      furthest = apart > Math.abs(endV[furthest - 1] - middleV) ? cell : furthest;
    }
    return furthest;
  }

  private DataTable table() {
    String passed = Numbers.with(Numbers.text(middleV, 3), "V");
    List<String> headers =
        List.of(
            words("column.cell"),
            words("column.end-voltage"),
            words("column.against-middle"),
            subject.words().say(counted ? "column.lead-ah" : "column.lead-min", passed));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < endV.length; i++) {
      boolean known = Double.isFinite(endV[i]);
      rows.add(
          List.of(
              Integer.toString(i + 1),
              known ? Numbers.text(endV[i], 3) : words("not-logged"),
              known ? Numbers.text((endV[i] - middleV) * 1000, 0) : words("not-logged"),
              leadText(leads[i])));
    }
    return new DataTable(headers, rows);
  }

  private String leadText(double lead) {
    if (!Double.isFinite(lead)) {
      return words("never");
    }
    return counted ? Numbers.text(lead, 1) : Numbers.text(lead * 60, 0);
  }

  private String words(String wordsKey) {
    return subject.words().say(wordsKey);
  }

  private static String millivolts(double volts) {
    return Numbers.with(Numbers.text(volts * 1000, 0), "mV");
  }
}
