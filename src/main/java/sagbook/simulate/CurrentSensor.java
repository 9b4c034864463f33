package sagbook.simulate;

/** The pack's current sensor, read in tenths of an ampere. */
final class CurrentSensor {
  private final double gain;
  private final double offsetA;
  private final double noiseA;
  private final Noise noise;

  CurrentSensor(double gain, double offsetA, double noiseA, Noise noise) {
    this.gain = gain;
    this.offsetA = offsetA;
    this.noiseA = noiseA;
    this.noise = noise;
  }

  int readTenths(double amps) {
    double reading = amps * gain + offsetA + noiseA * noise.normal();
    return (int) Math.floor(reading * 10 + 0.5);
  }
}
