package sagbook.simulate;

import static java.lang.StrictMath.exp;
import static java.lang.StrictMath.pow;
import static java.lang.StrictMath.tanh;

/**
 * Published open-circuit functions of one electrode against lithium: volt as a function of the
 * lithium fraction in it, 0 to 1.
 */
enum HalfCell {
  /** LFP: Afshar, Morris and Khajepour 2017, arXiv:1709.03970. */
  LFP_AFSHAR {
    @Override
    double volts(double y) {
      return 3.4077 - 0.020269 * y + 0.5 * exp(-150 * y) - 0.9 * exp(-30 * (1 - y));
    }
  },
  /** LFP: Safari and Delacourt 2011, J. Electrochem. Soc. 158, A562. */
  LFP_SAFARI {
    @Override
    double volts(double y) {
      double r = 1 - y;
      return 3.4323
          - 0.8428 * exp(-80.2493 * pow(r, 1.3198))
          - 3.2474e-6 * exp(20.2645 * pow(r, 3.8003))
          + 3.2482e-6 * exp(20.2646 * pow(r, 3.7995));
    }
  },
  /** NMC 811: Chen et al. 2020, J. Electrochem. Soc. 167, 080534. */
  NMC_CHEN {
    @Override
    double volts(double y) {
      return -0.8090 * y
          + 4.4875
          - 0.0428 * tanh(18.5138 * (y - 0.5542))
          - 17.7326 * tanh(15.7890 * (y - 0.3117))
          + 17.5842 * tanh(15.9308 * (y - 0.3120));
    }
  },
  /** Graphite: Safari and Delacourt 2011, J. Electrochem. Soc. 158, A562. */
  GRAPHITE_SAFARI {
    @Override
    double volts(double x) {
      return 0.6379
          + 0.5416 * exp(-305.5309 * x)
          + 0.044 * tanh(-(x - 0.1958) / 0.1088)
          - 0.1978 * tanh((x - 1.0571) / 0.0854)
          - 0.6875 * tanh((x + 0.0117) / 0.0529)
          - 0.0175 * tanh((x - 0.5692) / 0.0875);
    }
  },
  /** Graphite with silicon oxide: Chen et al. 2020, J. Electrochem. Soc. 167, 080534. */
  GRAPHITE_CHEN {
    @Override
    double volts(double x) {
      return 1.9793 * exp(-39.3631 * x)
          + 0.2482
          - 0.0909 * tanh(29.8538 * (x - 0.1234))
          - 0.04478 * tanh(14.9159 * (x - 0.2769))
          - 0.0205 * tanh(30.4444 * (x - 0.6103));
    }
  };

  abstract double volts(double lithiumFraction);

  /** The function on a fine grid, for speed. */
  Curve tabulated() {
    return Curve.of(this::volts, 0, 1, 16_384);
  }
}
