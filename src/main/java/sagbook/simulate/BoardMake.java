package sagbook.simulate;

/**
 * A monitoring board as built.
 *
 * @param gain reading over truth
 * @param offsetMillivolt added to the reading
 * @param noiseMillivolt standard deviation of a reading
 * @param temperatureOffsetC added to the temperature reading
 * @param readDelayS after the row's time, 0 or more; the boards are read one after the other
 */
record BoardMake(
    double gain,
    double offsetMillivolt,
    double noiseMillivolt,
    double temperatureOffsetC,
    double readDelayS) {}
