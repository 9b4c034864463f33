package sagbook.estimate.curve;

import java.util.List;
import sagbook.model.Chemistry;

/**
 * Published open-circuit functions of electrodes against lithium, V, over the share of lithium in
 * the electrode (0 to 1). They anchor the curve learned from the pack where the pack was never
 * seen.
 */
public enum HalfCells implements ElectrodePair {
  /** LFP of Afshar et al. 2017 (arXiv:1709.03970), graphite of Chen et al. 2020. */
  AFSHAR_CHEN(Chemistry.LFP, 0.0025, 0.9235, 0.039, 0.794) {
    @Override
    public double positive(double y) {
      return 3.4077 - 0.020269 * y + 0.5 * Math.exp(-150 * y) - 0.9 * Math.exp(-30 * (1 - y));
    }

    @Override
    public double negative(double x) {
      return graphiteChen(x);
    }
  },
  /** LFP and graphite of Safari and Delacourt, J. Electrochem. Soc. 158 (2011) A562. */
  SAFARI_DELACOURT(Chemistry.LFP, 0.02, 0.98, 0.0085, 0.78) {
    @Override
    public double positive(double y) {
      double empty = Math.max(0, 1 - y);
      return 3.4323
          - 0.8428 * Math.exp(-80.2493 * Math.pow(empty, 1.3198))
          - 3.2474e-6 * Math.exp(20.2645 * Math.pow(empty, 3.8003))
          + 3.2482e-6 * Math.exp(20.2646 * Math.pow(empty, 3.7995));
    }

    @Override
    public double negative(double x) {
      return 0.6379
          + 0.5416 * Math.exp(-305.5309 * x)
          + 0.044 * Math.tanh(-(x - 0.1958) / 0.1088)
          - 0.1978 * Math.tanh((x - 1.0571) / 0.0854)
          - 0.6875 * Math.tanh((x + 0.0117) / 0.0529)
          - 0.0175 * Math.tanh((x - 0.5692) / 0.0875);
    }
  },
  /** NMC 811 and graphite of Chen et al., J. Electrochem. Soc. 167 (2020) 080534. */
  NMC_CHEN(Chemistry.NMC, 0.26385, 0.85397, 0.02635, 0.91062) {
    @Override
    public double positive(double y) {
      return -0.8090 * y
          + 4.4875
          - 0.0428 * Math.tanh(18.5138 * (y - 0.5542))
          - 17.7326 * Math.tanh(15.7890 * (y - 0.3117))
          + 17.5842 * Math.tanh(15.9308 * (y - 0.3120));
    }

    @Override
    public double negative(double x) {
      return graphiteChen(x);
    }
  };

  private final Chemistry chemistry;
  private final double fullY;
  private final double emptyY;
  private final double emptyX;
  private final double fullX;

  HalfCells(Chemistry chemistry, double fullY, double emptyY, double emptyX, double fullX) {
    this.chemistry = chemistry;
    this.fullY = fullY;
    this.emptyY = emptyY;
    this.emptyX = emptyX;
    this.fullX = fullX;
  }

  @Override
  public double openCircuit(double charge) {
    return positive(emptyY + (fullY - emptyY) * charge)
        - negative(emptyX + (fullX - emptyX) * charge);
  }

  @Override
  public double positiveSize() {
    return 1 / (emptyY - fullY);
  }

  @Override
  public double negativeSize() {
    return 1 / (fullX - emptyX);
  }

  @Override
  public double fullPositive() {
    return fullY;
  }

  @Override
  public double emptyNegative() {
    return emptyX;
  }

  @Override
  public Chemistry chemistry() {
    return chemistry;
  }

  /** The pairs known for a chemistry, the most usual first. */
  public static List<HalfCells> of(Chemistry chemistry) {
    return List.of(values()).stream().filter(h -> h.chemistry == chemistry).toList();
  }

  private static double graphiteChen(double x) {
    return 1.9793 * Math.exp(-39.3631 * x)
        + 0.2482
        - 0.0909 * Math.tanh(29.8538 * (x - 0.1234))
        - 0.04478 * Math.tanh(14.9159 * (x - 0.2769))
        - 0.0205 * Math.tanh(30.4444 * (x - 0.6103));
  }
}
