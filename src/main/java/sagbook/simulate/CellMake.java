package sagbook.simulate;

/**
 * A cell as built, at 25 °C and half charged.
 *
 * @param capacityAh between the chemistry's empty and full rest voltages when new
 * @param ohmicMilliohm part of the resistance that answers at once
 * @param fastMilliohm part that answers within {@link #fastS} (charge transfer)
 * @param fastS its time constant, s
 * @param slowMilliohm part that answers within {@link #slowS} (diffusion)
 * @param slowS its time constant, s
 * @param leakMilliamp natural self-discharge
 */
record CellMake(
    double capacityAh,
    double ohmicMilliohm,
    double fastMilliohm,
    double fastS,
    double slowMilliohm,
    double slowS,
    double leakMilliamp) {

  /** Resistance seen {@code seconds} after a step, milliohm: R(t) = R0 + sum Ri (1 - e^(-t/ti)). */
  double stepResistanceMilliohm(double seconds) {
    return ohmicMilliohm
        + fastMilliohm * (1 - StrictMath.exp(-seconds / fastS))
        + slowMilliohm * (1 - StrictMath.exp(-seconds / slowS));
  }
}
