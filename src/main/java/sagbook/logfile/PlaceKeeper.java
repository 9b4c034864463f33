package sagbook.logfile;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Queue;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/**
 * Follows cells whose channels change places when a logger starts again. Across a pause each cell
 * keeps its distance from the string's mean within a few millivolts; when two or more do not, but
 * each takes exactly the distance that another had, and all the others stand still, the channels
 * were numbered anew. The cells are then read on as they stood before. Nothing is touched where the
 * cells lie too close to tell. The sizes are common practice, no source.
 */
final class PlaceKeeper implements RowStream {
  private static final Words WORDS = Words.english();
  private static final int WINDOW = 12;
  private static final int LEAST_AFTER = 4;
  private static final double PAUSE_STEPS = 2.5;

  /** Cells closer than this can't be told from each other. */
  private static final double APART_VOLT = 0.008;

  private static final double STILL_VOLT = APART_VOLT / 2;
  private static final double SAME_VOLT = APART_VOLT / 3;

  /** Mean square by which temperatures must fit better in their old places to stay there, K². */
  private static final double STAYS_KELVIN_SQUARED = 1;

  private static final int MOST_SENTENCES = 5;

  private final RowStream in;
  private final Slots slots;
  private final ZoneId zone;
  private final double pauseS;
  private final Deque<Row> behind = new ArrayDeque<>();
  private final Deque<Row> ahead = new ArrayDeque<>();
  private final Queue<Row> free = new ArrayDeque<>();
  private final double[] turned;
  private final List<String> sentences = new ArrayList<>();
  private int[] voltagePlace;
  private int[] temperaturePlace;
  private boolean changed;
  private boolean ended;

  /** {@code zone} is that of the moments which are said. */
  PlaceKeeper(RowStream in, Slots slots, double cadenceS, ZoneId zone) {
    this.in = in;
    this.slots = slots;
    this.zone = zone;
    this.pauseS = PAUSE_STEPS * cadenceS;
    this.turned = new double[slots.cells()];
    this.voltagePlace = IntStream.rangeClosed(1, slots.cells()).toArray();
    this.temperaturePlace = voltagePlace.clone();
    for (int i = 0; i < 2 * WINDOW + 2; i++) {
      free.add(new Row(slots));
    }
  }

  /** What was changed, in plain sentences. */
  List<String> sentences() {
    return List.copyOf(sentences);
  }

  @Override
  public boolean next(Row row) throws InputProblem {
    if (ahead.isEmpty() && !take()) {
      return false;
    }
    boolean afterPause =
        !behind.isEmpty() && ahead.getFirst().timeS - behind.getLast().timeS > pauseS;
    if (afterPause) {
      lookAhead();
      settle();
      free.addAll(behind);
      behind.clear();
    }
    row.copyFrom(ahead.getFirst());
    free.add(ahead.removeFirst());
    if (changed) {
      turn(row);
    }
    remember(row);
    return true;
  }

  private boolean take() throws InputProblem {
    Row row = free.remove();
    ended = ended || !in.next(row);
    (ended ? free : ahead).add(row);
    return !ended;
  }

  /** Takes the rows that follow a pause, up to the next pause. */
  private void lookAhead() throws InputProblem {
    boolean paused = false;
    while (!paused && ahead.size() < WINDOW) {
      double lastS = ahead.getLast().timeS;
      paused = !take() || ahead.getLast().timeS - lastS > pauseS;
    }
  }

  private void remember(Row row) {
    Row kept = free.remove();
    kept.copyFrom(row);
    behind.add(kept);
    if (behind.size() > WINDOW) {
      free.add(behind.removeFirst());
    }
  }

  private void settle() {
    List<Row> after = untilPause();
    if (behind.size() < WINDOW || after.size() < LEAST_AFTER) {
      return;
    }
    double[] stood = deviations(behind, slots.voltage(1));
    double[] stands = deviations(after, slots.voltage(1));
    int[] place = places(stood, stands);
    if (place.length == 0) {
      return;
    }
    changed = true;
    voltagePlace = place;
    temperaturePlace = temperaturesStay(after, place) ? temperaturePlace : place;
    say(place, after.get(0).timeS);
  }

  private List<Row> untilPause() {
    List<Row> rows = new ArrayList<>();
    for (Row row : ahead) {
      if (!rows.isEmpty() && row.timeS - rows.get(rows.size() - 1).timeS > pauseS) {
        break;
      }
      rows.add(row);
    }
    return rows;
  }

  /** Mean of each channel about the mean of all, over the rows that have all; NaN without any. */
  private double[] deviations(Iterable<Row> rows, int firstSlot) {
    int n = slots.cells();
    double[] sum = new double[n];
    int used = 0;
    for (Row row : rows) {
      double mean = 0;
      for (int i = 0; i < n; i++) {
        mean += row.values[firstSlot + i] / n;
      }
      if (!Double.isNaN(mean)) {
        used++;
        for (int i = 0; i < n; i++) {
          sum[i] += row.values[firstSlot + i] - mean;
        }
      }
    }
    for (int i = 0; i < n; i++) {
      sum[i] /= used;
    }
    return sum;
  }

  /**
   * The channel of each cell after a pause; empty when they are where they were, or it can't be
   * told.
   */
  private int[] places(double[] stood, double[] stands) {
    int n = slots.cells();
    int[] place = voltagePlace.clone();
    boolean[] given = new boolean[n];
    boolean moves = false;
    for (int i = 0; i < n; i++) {
      int channel = voltagePlace[i] - 1;
      double moved = Math.abs(stands[channel] - stood[i]);
      if (moved < STILL_VOLT) {
        given[channel] = true;
      } else if (moved < APART_VOLT || Double.isNaN(moved)) {
        return new int[0];
      } else {
        place[i] = 0;
        moves = true;
      }
    }
    for (int i = 0; moves && i < n; i++) {
      if (place[i] == 0) {
        int found = nearest(stood[i], stands, given);
        if (found < 0) {
          return new int[0];
        }
        given[found] = true;
        place[i] = found + 1;
      }
    }
    return moves ? place : new int[0];
  }

  private static int nearest(double stood, double[] stands, boolean[] given) {
    int best = -1;
    for (int k = 0; k < stands.length; k++) {
      double off = Math.abs(stands[k] - stood);
      if (!given[k] && off < SAME_VOLT && (best < 0 || off < Math.abs(stands[best] - stood))) {
        best = k;
      }
    }
    return best;
  }

  private boolean temperaturesStay(List<Row> after, int[] place) {
    double[] stood = deviations(behind, slots.temperature(1));
    double[] stands = deviations(after, slots.temperature(1));
    double better = 0;
    for (int i = 0; i < stood.length; i++) {
      double there = stands[place[i] - 1] - stood[i];
      double here = stands[temperaturePlace[i] - 1] - stood[i];
      better += there * there - here * here;
    }
    return better / stood.length > STAYS_KELVIN_SQUARED;
  }

  private void turn(Row row) {
    turn(row, slots.voltage(1), voltagePlace);
    turn(row, slots.bleed(1), voltagePlace);
    turn(row, slots.temperature(1), temperaturePlace);
  }

  private void turn(Row row, int firstSlot, int[] place) {
    for (int i = 0; i < turned.length; i++) {
      turned[i] = row.values[firstSlot + place[i] - 1];
    }
    System.arraycopy(turned, 0, row.values, firstSlot, turned.length);
  }

  private void say(int[] place, double timeS) {
    if (sentences.size() >= MOST_SENTENCES) {
      return;
    }
    String moved =
        IntStream.range(0, place.length)
            .filter(i -> place[i] != i + 1)
            .mapToObj(i -> Integer.toString(i + 1))
            .collect(Collectors.joining(", "));
    String from = WORDS.time(Instant.ofEpochSecond((long) timeS), zone);
    sentences.add(
        moved.isEmpty()
            ? WORDS.say("reading.places.again", from)
            : WORDS.say("reading.places.moved", from, moved));
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
