package sagbook.account;

import java.time.LocalDate;

/**
 * What a bank went through on one day, from minute means.
 *
 * @param day in the pack's time zone
 * @param highestV highest cell voltage, V
 * @param highestCell the cell that had it
 * @param lowestV lowest cell voltage, V
 * @param lowestCell the cell that had it
 * @param coldestC coldest cell temperature, °C; NaN when none is logged
 * @param warmestC warmest cell temperature, °C; NaN when none is logged
 * @param chargedAh charge put in, Ah
 * @param dischargedAh charge taken out, Ah
 * @param deepestAh most charge that was out since the day's fullest moment, Ah
 * @param chargedCoolHours charging while the coldest cell was cool, h
 * @param nearFullHours time near full, see {@link FullState}, h
 * @param outsideHours time in which any cell was outside its limits, h
 */
public record StressDay(
    LocalDate day,
    double highestV,
    int highestCell,
    double lowestV,
    int lowestCell,
    double coldestC,
    double warmestC,
    double chargedAh,
    double dischargedAh,
    double deepestAh,
    double chargedCoolHours,
    double nearFullHours,
    double outsideHours) {}
