package sagbook.simulate;

/**
 * One cell's state and how it moves: charge, lost lithium, two relaxing overvoltages, hysteresis,
 * temperature.
 *
 * <p>Model: terminal voltage = U(charge, lost lithium) + hysteresis + R0 I + u1 + u2, where u1 and
 * u2 follow the current with their time constants (two RC pairs). Resistances follow Arrhenius'
 * law; activation energies are invented so that the whole cell lies in the 11 to 22 kJ/mol measured
 * on a 3 Ah LFP cell (Naumann, PhD thesis, TU Munich 2018). Hysteresis follows Plett's one-state
 * model (J. Power Sources 134 (2004) 277, from memory). Entropy is left out.
 */
final class Cell {
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double OHMIC_ENERGY = 8_000;
  private static final double FAST_ENERGY = 30_000;
  private static final double SLOW_ENERGY = 18_000;
  private static final double HEAT_CAPACITY_J_PER_K_AND_AH = 19.3;
  private static final double HYSTERESIS_TURN = 40;
  private static final Curve NEAR_EMPTY = Curve.of(Cell::nearEmpty, -0.1, 1.1, 2400);
  private static final Curve NEAR_FULL = Curve.of(Cell::nearFull, -0.1, 1.1, 480);

  private final CellMake make;
  private final OpenCircuit openCircuit;
  private final double designAh;
  private final double hysteresisV;
  private final double coolingS;
  private double charge;
  private double lost;
  private double leakA;
  private double resistanceFactor = 1;
  private double fastV;
  private double slowV;
  private double hysteresis;
  private double temperatureC;
  private double ohmicOhm;
  private double fastOhm;
  private double slowOhm;

  Cell(CellMake make, OpenCircuit openCircuit, double hysteresisV, double coolingS) {
    this.make = make;
    this.openCircuit = openCircuit;
    this.hysteresisV = hysteresisV;
    this.coolingS = coolingS;
    this.leakA = make.leakMilliamp() / 1000;
    this.designAh = make.capacityAh() / window(0);
    this.charge = openCircuit.full(0);
    settleAt(25);
  }

  /** Relaxed, at this temperature. */
  void settleAt(double celsius) {
    temperatureC = celsius;
    fastV = 0;
    slowV = 0;
    refreshResistance();
  }

  /** Puts the cell this many ampere-hours below full. */
  void setRoomToFullAh(double roomAh) {
    charge = fullCharge() - roomAh / designAh;
    refreshResistance();
  }

  /** Ageing and faults as they are now. */
  void setCondition(Condition condition) {
    lost = condition.lostCapacity * make.capacityAh() / designAh;
    leakA = (make.leakMilliamp() + condition.leakMilliamp) / 1000;
    resistanceFactor = condition.resistanceFactor;
  }

  /**
   * Moves on by {@code seconds} at constant current.
   *
   * @param amps through the terminals, charge positive
   * @param fastDecay e^(-seconds/fastS)
   * @param slowDecay e^(-seconds/slowS)
   */
  void advance(
      double amps, double seconds, double fastDecay, double slowDecay, double surroundingsC) {
    double turn = HYSTERESIS_TURN * Math.abs(amps) * seconds / (3600 * designAh);
    hysteresis += (Math.signum(amps) - hysteresis) * (turn / (1 + turn));
    double heatW = amps * (amps * ohmicOhm + fastV + slowV);
    fastV = fastV * fastDecay + amps * fastOhm * (1 - fastDecay);
    slowV = slowV * slowDecay + amps * slowOhm * (1 - slowDecay);
    charge += (amps - leakA) * seconds / (3600 * designAh);
    temperatureC +=
        heatW * seconds / (HEAT_CAPACITY_J_PER_K_AND_AH * make.capacityAh())
            + (surroundingsC - temperatureC) * (seconds / (coolingS + seconds));
    refreshResistance();
  }

  private void refreshResistance() {
    double inverse = (1 / (temperatureC + 273.15) - 1 / 298.15) / GAS_CONSTANT;
    double byCharge =
        (1 + NEAR_EMPTY.at(charge - lost) + NEAR_FULL.at(charge)) * resistanceFactor / 1000;
    ohmicOhm = make.ohmicMilliohm() * resistanceFactor / 1000 * exp(OHMIC_ENERGY * inverse);
    fastOhm = make.fastMilliohm() * byCharge * exp(FAST_ENERGY * inverse);
    slowOhm = make.slowMilliohm() * byCharge * exp(SLOW_ENERGY * inverse);
  }

  /** Fourth-order series: within 0.1 % for the exponents that room temperatures give. */
  private static double exp(double x) {
    double half = x / 4;
    double e = 1 + half * (1 + half * (0.5 + half * (1 / 6.0 + half / 24)));
    return e * e * e * e;
  }

  /** What resistance gains as the negative electrode runs out of lithium; the shape is invented. */
  private static double nearEmpty(double z) {
    return 0.35 * StrictMath.exp(-z / 0.06) + 3 * StrictMath.exp(-Math.max(z, 0) / 0.015);
  }

  /** What resistance gains near full; the shape is invented. */
  private static double nearFull(double z) {
    return 0.12 * StrictMath.exp((z - 1) / 0.05);
  }

  double terminalVolts(double amps) {
    return openCircuitVolts() + hysteresisV * hysteresis + amps * ohmicOhm + fastV + slowV;
  }

  double openCircuitVolts() {
    return openCircuit.volts(charge, lost);
  }

  double temperatureC() {
    return temperatureC;
  }

  double leakA() {
    return leakA;
  }

  /** Ampere-hours between the empty and full rest voltages, as the cell is now. */
  double capacityAh() {
    return window(lost) * designAh;
  }

  double roomToFullAh() {
    return (fullCharge() - charge) * designAh;
  }

  /** At 25 °C and half charge, as the cell is now. */
  double stepResistanceMilliohm(double seconds) {
    return make.stepResistanceMilliohm(seconds) * resistanceFactor;
  }

  private double fullCharge() {
    return openCircuit.full(lost);
  }

  private double window(double lostNow) {
    return openCircuit.full(lostNow) - openCircuit.empty(lostNow);
  }
}
