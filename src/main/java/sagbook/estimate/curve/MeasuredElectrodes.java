package sagbook.estimate.curve;

import sagbook.numeric.MonotoneCurve;

/**
 * Electrodes that were published as measured points: V against lithium over the share of lithium.
 *
 * <p>As few of the points as reproduce the others within 5 mV at the steep ends and 1.5 mV between.
 */
final class MeasuredElectrodes {
  /** LCO of the cell of Ai et al., J. Electrochem. Soc. 167 (2020) 013512; 0.40 to 0.999. */
  static final MonotoneCurve LCO_AI =
      new MonotoneCurve(
          new double[] {
            0.4, 0.42, 0.431, 0.4379, 0.4468, 0.4658, 0.5101, 0.5417, 0.6456, 0.6924, 0.7697,
            0.8178, 0.8862, 0.9255, 0.9407, 0.9584, 0.9672, 0.9786, 0.9913, 0.9951, 0.9964, 0.9989
          },
          new double[] {
            4.3908, 4.3303, 4.297, 4.2765, 4.2587, 4.2227, 4.1448, 4.0929, 3.9709, 3.9349, 3.9001,
            3.8933, 3.8807, 3.8582, 3.8393, 3.7969, 3.765, 3.7194, 3.6456, 3.5919, 3.5572, 3.4089
          });

  /** Graphite of the same cell; 0.001 to 0.997. */
  static final MonotoneCurve GRAPHITE_AI =
      new MonotoneCurve(
          new double[] {
            0.0013, 0.0015, 0.0019, 0.0022, 0.0041, 0.0048, 0.0065, 0.0074, 0.0091, 0.0141, 0.024,
            0.036, 0.0591, 0.0713, 0.0803, 0.1192, 0.1281, 0.1416, 0.1703, 0.1897, 0.2386, 0.3363,
            0.512, 0.5511, 0.6097, 0.6976, 0.9418, 0.9702, 0.9804, 0.9968
          },
          new double[] {
            1.04, 1.01, 0.9727, 0.9425, 0.8162, 0.7803, 0.719, 0.6914, 0.65, 0.5608, 0.4485, 0.3595,
            0.2563, 0.2361, 0.231, 0.2233, 0.2183, 0.2082, 0.1938, 0.1842, 0.1679, 0.144, 0.1358,
            0.131, 0.1154, 0.1047, 0.0965, 0.0861, 0.076, 0.0404
          });

  private MeasuredElectrodes() {}
}
