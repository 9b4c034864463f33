package sagbook.evidence;

/**
 * What the cells went through, counted at the full rate of the log.
 *
 * @param hours time covered by samples, h
 * @param chargedAh charge put in, Ah; NaN without current
 * @param dischargedAh charge taken out, Ah; NaN without current
 * @param chargedKWh energy put in, kWh; NaN without current
 * @param dischargedKWh energy taken out, kWh; NaN without current
 * @param hoursAboveMax hours above the upper voltage limit, one a cell
 * @param hoursBelowMin hours below the lower voltage limit, one a cell
 * @param highestVoltageV highest reading that lasted (two samples or more), one a cell
 * @param lowestVoltageV lowest reading that lasted, one a cell
 * @param hoursChargingCold hours of charging below the lower charge temperature, one a cell
 * @param hoursChargingHot hours of charging above the upper charge temperature, one a cell
 * @param hoursHot hours above the upper discharge temperature, one a cell
 * @param lowestTemperatureC one a cell; NaN when not logged
 * @param highestTemperatureC one a cell; NaN when not logged
 * @param meanTemperatureC one a cell; NaN when not logged
 * @param bledAh charge bled by each board, Ah; NaN when not logged
 * @param highestDischargeA highest discharge current, A (a positive number); NaN without current
 */
public record Stress(
    double hours,
    double chargedAh,
    double dischargedAh,
    double chargedKWh,
    double dischargedKWh,
    double[] hoursAboveMax,
    double[] hoursBelowMin,
    double[] highestVoltageV,
    double[] lowestVoltageV,
    double[] hoursChargingCold,
    double[] hoursChargingHot,
    double[] hoursHot,
    double[] lowestTemperatureC,
    double[] highestTemperatureC,
    double[] meanTemperatureC,
    double[] bledAh,
    double highestDischargeA) {}
