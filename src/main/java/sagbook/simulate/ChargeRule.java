package sagbook.simulate;

/**
 * The owner's settings.
 *
 * @param meanFullVolts mean cell voltage the charger holds
 * @param easeVolts the charger eases off once a cell passes this
 * @param cellStopVolts charge pauses once a cell passes this
 * @param floatVolts after a full charge the house draws until the mean has sunk to this
 * @param restartVolts mean cell voltage below which a finished charge may start again
 * @param cutVolts discharge ends once a cell falls below this
 * @param holdSeconds how long the charger holds before it stops
 */
public record ChargeRule(
    double meanFullVolts,
    double easeVolts,
    double cellStopVolts,
    double floatVolts,
    double restartVolts,
    double cutVolts,
    double holdSeconds) {}
