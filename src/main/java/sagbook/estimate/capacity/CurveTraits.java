package sagbook.estimate.capacity;

import sagbook.model.Chemistry;

/**
 * What a chemistry's curve does to what can be told by it; set on invented packs of a generator
 * that shares no code with this project.
 *
 * @param flat whether it is flat but near its ends, so that an end of charge is told by the knee
 * @param wearShare share by which the charge that a worn cell lost is misjudged, since cells wear
 *     in more ways than two ends of a curve that move apart
 * @param wornCurveV voltage by which the curve of a cell that lost everything would depart from a
 *     usual one with its ends moved, V; of one that lost a share, so much of it
 * @param cellShapeSd share of capacity by which a single cell's curve may differ from the common
 *     one, one standard deviation
 */
record CurveTraits(boolean flat, double wearShare, double wornCurveV, double cellShapeSd) {
  /**
   * The same share for a cell that was told by its graphite ({@link WornCellFit}), which leaves the
   * ways of wear free and counts the rest as a misfit. Common practice, no source.
   */
  static final double WEAR_BY_GRAPHITE = 0.03;

  private static final CurveTraits FLAT = new CurveTraits(true, 0.07, 0.03, 0.0026);
  private static final CurveTraits SLOPING = new CurveTraits(false, 0.12, 0.1, 0.0045);

  static CurveTraits of(Chemistry chemistry) {
    return chemistry == Chemistry.LFP ? FLAT : SLOPING;
  }
}
