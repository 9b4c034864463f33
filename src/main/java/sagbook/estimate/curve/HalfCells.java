package sagbook.estimate.curve;

import java.util.List;
import sagbook.model.Chemistry;

/**
 * Published open-circuit curves of electrodes against lithium, V, over the share of lithium in the
 * electrode (0 to 1). They anchor the curve learned from the pack where the pack was never seen.
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
      double empty = Math.max(0, Math.min(1 - y, SAFARI_EMPTIEST));
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
  },
  /**
   * NMC 111 and graphite of a 12.5 Ah pouch cell taken apart: About:Energy, example parameters for
   * the Battery Parameter eXchange, December 2022.
   */
  NMC_ABOUT_ENERGY(Chemistry.NMC, 0.42424, 0.96210, 0.005504, 0.75668) {
    @Override
    public double positive(double y) {
      return -3.04420906 * y
          + 10.04892207
          - 0.65637536 * Math.tanh(-4.02134095 * (y - 0.80063948))
          + 4.24678547 * Math.tanh(12.17805062 * (y - 7.57659337))
          - 0.3757068 * Math.tanh(59.33067782 * (y - 0.99784492));
    }

    @Override
    public double negative(double x) {
      return 0.947057878 * Math.exp(-159.418743 * x)
          - 35092.8033
          + 0.164230269 * Math.tanh(-45.5509094 * (x - 0.0324116012))
          + 0.0369968491 * Math.tanh(-19.6718868 * (x - 0.168334476))
          + 19151.7003 * Math.tanh(3.19648312 * (x - 1.85139824))
          + 54244.8511 * Math.tanh(-3.19009848 * (x - 2.01660395));
    }
  },
  /**
   * NCA and graphite of Kim et al., J. Electrochem. Soc. 158 (2011) A955; shares between 2.7 and
   * 4.2 V by the amounts of material and lithium given there.
   */
  NCA_KIM(Chemistry.NCA, 0.34212, 0.98304, 0.06820, 0.69655) {
    @Override
    public double positive(double y) {
      double polynomial = 0;
      for (double coefficient : KIM) {
        polynomial = polynomial * y + coefficient;
      }
      // Beyond 1 the last term would leave the range of numbers.
      return polynomial - 0.61386 * Math.exp(5.8201 * Math.pow(Math.min(1, y), 136.4));
    }

    @Override
    public double negative(double x) {
      return 0.124
          + 1.5 * Math.exp(-70 * x)
          - 0.0351 * Math.tanh((x - 0.286) / 0.083)
          - 0.0045 * Math.tanh((x - 0.9) / 0.119)
          - 0.035 * Math.tanh((x - 0.99) / 0.05)
          - 0.0147 * Math.tanh((x - 0.5) / 0.034)
          - 0.102 * Math.tanh((x - 0.194) / 0.142)
          - 0.022 * Math.tanh((x - 0.98) / 0.0164)
          - 0.011 * Math.tanh((x - 0.124) / 0.0226)
          + 0.0155 * Math.tanh((x - 0.105) / 0.029);
    }
  },
  /**
   * LCO and graphite of Ai et al., J. Electrochem. Soc. 167 (2020) 013512; shares between 3.0 and
   * 4.2 V by the amounts of material and lithium given there.
   */
  LCO_AI(Chemistry.LCO, 0.42980, 0.96605, 0.00508, 0.84817) {
    @Override
    public double positive(double y) {
      return MeasuredElectrodes.LCO_AI.at(y);
    }

    @Override
    public double negative(double x) {
      return MeasuredElectrodes.GRAPHITE_AI.at(x);
    }
  };

  /**
   * Share of sites without lithium, a little beyond all, at which the LFP function of Safari and
   * Delacourt is highest; beyond, its two last terms cancel each other and it falls by volts.
   */
  private static final double SAFARI_EMPTIEST = 1.00824;

  /** Polynomial of the NCA electrode of Kim et al. 2011, highest power first. */
  private static final double[] KIM = {
    1.638, -2.222, 15.056, -23.488, 81.246, -344.566, 621.3475, -554.774, 264.427, -66.3691, 11.8058
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

  /**
   * The pairs that may hold for a chemistry, the most usual first. Electrodes rich in nickel are
   * alike, and today's graphites often have silicon in them as that of Chen et al.: a measured NCA
   * cell lies 5 mV from theirs and 14 mV from Kim's. Of cells without a flat part all pairs may
   * hold, since what a cell is sold as says little of its blend.
   */
  public static List<HalfCells> of(Chemistry chemistry) {
    return switch (chemistry) {
      case LFP -> List.of(AFSHAR_CHEN, SAFARI_DELACOURT);
      case NMC -> List.of(NMC_CHEN, NMC_ABOUT_ENERGY, NCA_KIM, LCO_AI);
      case NCA -> List.of(NMC_CHEN, NCA_KIM, NMC_ABOUT_ENERGY, LCO_AI);
      case LCO -> List.of(LCO_AI, NMC_CHEN, NMC_ABOUT_ENERGY, NCA_KIM);
    };
  }

  /** All pairs whose graphites differ: the same material stands against any positive electrode. */
  public static List<ElectrodePair> graphites() {
    return List.of(NMC_CHEN, NMC_ABOUT_ENERGY, NCA_KIM, LCO_AI, SAFARI_DELACOURT);
  }

  private static double graphiteChen(double x) {
    return 1.9793 * Math.exp(-39.3631 * x)
        + 0.2482
        - 0.0909 * Math.tanh(29.8538 * (x - 0.1234))
        - 0.04478 * Math.tanh(14.9159 * (x - 0.2769))
        - 0.0205 * Math.tanh(30.4444 * (x - 0.6103));
  }
}
