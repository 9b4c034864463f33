package sagbook.season;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.KeptMonth;

/**
 * What a bank went through over its months. What was not logged is missing.
 *
 * @param hours of log
 * @param chargedAh charge put in, Ah
 * @param dischargedAh charge taken out, Ah
 * @param chargedKWh energy put in, kWh
 * @param dischargedKWh energy taken out, kWh
 * @param fullCycles charge taken out over the nominal capacity
 * @param fullChargeDays days on which a charge ended near full
 * @param highestDischargeA highest discharge current, A
 * @param highestV highest cell voltage that lasted, V
 * @param lowestV lowest cell voltage that lasted, V
 * @param highestC highest cell temperature, °C
 * @param lowestC lowest cell temperature, °C
 * @param hoursAboveMax hours of the worst cell above the upper voltage limit
 * @param hoursBelowMin hours of the worst cell below the lower voltage limit
 * @param hoursChargingCold hours of the worst cell of charging while too cold
 * @param hoursChargingHot hours of the worst cell of charging while too hot
 * @param hoursHot hours of the worst cell above the upper discharge temperature
 */
public record StressAccount(
    OptionalDouble hours,
    OptionalDouble chargedAh,
    OptionalDouble dischargedAh,
    OptionalDouble chargedKWh,
    OptionalDouble dischargedKWh,
    OptionalDouble fullCycles,
    OptionalDouble fullChargeDays,
    OptionalDouble highestDischargeA,
    OptionalDouble highestV,
    OptionalDouble lowestV,
    OptionalDouble highestC,
    OptionalDouble lowestC,
    OptionalDouble hoursAboveMax,
    OptionalDouble hoursBelowMin,
    OptionalDouble hoursChargingCold,
    OptionalDouble hoursChargingHot,
    OptionalDouble hoursHot) {

  static StressAccount of(List<KeptMonth> months) {
    double nominal = months.get(months.size() - 1).battery().nominalCapacityAh();
    OptionalDouble discharged = counted(months, BankFigure.Counted.DISCHARGED_AH, Double::sum);
    return new StressAccount(
        counted(months, BankFigure.Counted.HOURS, Double::sum),
        counted(months, BankFigure.Counted.CHARGED_AH, Double::sum),
        discharged,
        counted(months, BankFigure.Counted.CHARGED_KWH, Double::sum),
        counted(months, BankFigure.Counted.DISCHARGED_KWH, Double::sum),
        discharged.isPresent()
            ? OptionalDouble.of(discharged.getAsDouble() / nominal)
            : OptionalDouble.empty(),
        counted(months, BankFigure.Counted.FULL_CHARGE_DAYS, Double::sum),
        counted(months, BankFigure.Counted.HIGHEST_DISCHARGE_A, Math::max),
        extreme(months, CellReading.HIGHEST_VOLTAGE_V, Math::max),
        extreme(months, CellReading.LOWEST_VOLTAGE_V, Math::min),
        extreme(months, CellReading.HIGHEST_TEMPERATURE_C, Math::max),
        extreme(months, CellReading.LOWEST_TEMPERATURE_C, Math::min),
        worst(months, CellReading.HOURS_ABOVE_MAX_VOLTAGE),
        worst(months, CellReading.HOURS_BELOW_MIN_VOLTAGE),
        worst(months, CellReading.HOURS_CHARGING_COLD),
        worst(months, CellReading.HOURS_CHARGING_HOT),
        worst(months, CellReading.HOURS_HOT));
  }

  private static OptionalDouble counted(
      List<KeptMonth> months, BankFigure.Counted count, DoubleBinaryOperator together) {
    return months.stream()
        .filter(month -> month.counts().containsKey(count))
        .mapToDouble(month -> month.counts().get(count))
        .reduce(together);
  }

  private static OptionalDouble extreme(
      List<KeptMonth> months, CellReading reading, DoubleBinaryOperator together) {
    return months.stream()
        .flatMap(month -> month.cells().stream())
        .filter(cell -> cell.readings().containsKey(reading))
        .mapToDouble(cell -> cell.readings().get(reading))
        .reduce(together);
  }

  /** The sum over the months of the cell that has most. */
  private static OptionalDouble worst(List<KeptMonth> months, CellReading reading) {
    OptionalDouble worst = OptionalDouble.empty();
    for (int place = 0; place < months.get(0).cells().size(); place++) {
      int at = place;
      OptionalDouble sum =
          months.stream()
              .filter(month -> at < month.cells().size())
              .map(month -> month.cells().get(at))
              .filter(cell -> cell.readings().containsKey(reading))
              .mapToDouble(cell -> cell.readings().get(reading))
              .reduce(Double::sum);
      if (sum.isPresent()) {
        worst = OptionalDouble.of(Math.max(sum.getAsDouble(), worst.orElse(0)));
      }
    }
    return worst;
  }
}
