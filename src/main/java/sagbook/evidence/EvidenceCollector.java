package sagbook.evidence;

import java.util.Arrays;
import sagbook.model.Channels;
import sagbook.model.Limits;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;
import sagbook.numeric.Robust;

/**
 * Gathers the evidence of one bank in a single pass. Memory does not grow with the length of the
 * log beyond the thinned record, which is capped.
 */
public final class EvidenceCollector implements SampleSink {
  private final Channels channels;
  private final Stopwatch clock = new Stopwatch();
  private final ThinnedBuilder thinned;
  private final StepCollector steps;
  private final EdgeCollector edges;
  private final StressCollector stress;
  private final StandstillCollector standstill;
  private final double[] spacingS = new double[4096];
  private int spacings;
  private final double bleedResistorOhm;
  private long rows;
  private double firstS = Double.NaN;
  private double lastS = Double.NaN;

  /**
   * A collector for one bank.
   *
   * @param nominalAh nominal capacity, Ah
   * @param bleedResistorOhm what a board bleeds its cell through
   */
  public EvidenceCollector(
      Channels channels, Limits limits, double nominalAh, double bleedResistorOhm) {
    this.channels = channels;
    this.bleedResistorOhm = bleedResistorOhm;
    this.thinned = new ThinnedBuilder(channels);
    this.steps = new StepCollector(channels, nominalAh);
    this.edges = new EdgeCollector(channels);
    this.stress = new StressCollector(channels, limits, nominalAh);
    this.standstill = new StandstillCollector(channels);
  }

  @Override
  public void accept(SampleBlock block) {
    if (block.rows() == 0) {
      return;
    }
    if (rows == 0) {
      firstS = block.timeS()[0];
      clock.start(block);
      thinned.start(clock.cadenceS());
      steps.start(clock.cadenceS());
    }
    steps.prepare(block);
    for (int r = 0; r < block.rows(); r++) {
      clock.advance(block, r);
      thinned.take(block, r, clock);
      steps.take(block, r, clock);
      edges.take(block, r, clock);
      stress.take(block, r, clock);
      standstill.take(block, r, clock);
      noteSpacing(clock.elapsedS());
    }
    rows += block.rows();
    lastS = block.timeS()[block.rows() - 1];
  }

  /** Keeps an even sample of the row spacings: every one at first, then ever fewer. */
  private void noteSpacing(double elapsedS) {
    if (elapsedS > 0) {
      spacingS[spacings % spacingS.length] = elapsedS;
      spacings = spacings == 2 * spacingS.length - 1 ? spacingS.length : spacings + 1;
    }
  }

  /** What was gathered of a log that has one time a row; call once, after the last block. */
  public Evidence finish() {
    return finish(new double[0]);
  }

  /**
   * What was gathered; call once, after the last block.
   *
   * @param toldLagS how long after the current each cell is read, s, where the log has a time for
   *     each value; else empty
   */
  public Evidence finish(double[] toldLagS) {
    ThinnedRecord record = thinned.finish();
    double[] seen = Arrays.copyOf(spacingS, Math.min(spacings, spacingS.length));
    double cadenceS = seen.length == 0 ? clock.cadenceS() : Robust.median(seen);
    return new Evidence(
        channels,
        firstS,
        lastS,
        rows,
        cadenceS,
        clock.wanderAhInADay(),
        record,
        steps.basis(),
        steps.finish(),
        steps.onsets(),
        toldLagS.clone(),
        edges.finish(),
        Turns.of(record),
        stress.finish(record, bleedResistorOhm),
        standstill.finish());
  }
}
