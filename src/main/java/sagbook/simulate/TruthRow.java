package sagbook.simulate;

import java.time.YearMonth;
import sagbook.model.Finding;

/**
 * The truth about one cell over one month.
 *
 * @param month it holds for
 * @param cell 1 for the first
 * @param capacityAh mean over the month's midnights, between the empty and full rest voltages
 * @param lastCapacityAh on the month's last midnight
 * @param capacityRelative mean capacity over the string's median
 * @param resistance1sMilliohm cell and joint 1 s after a step, 25 °C and half charge, mean
 * @param resistance10sMilliohm the same after 10 s
 * @param resistance30sMilliohm the same after 30 s
 * @param resistance90sMilliohm the same after 90 s
 * @param jointMilliohm the joint's part, mean
 * @param chargeOffsetPercent charge above (positive) or below the string's median at full, % of
 *     nominal capacity, mean
 * @param lastChargeOffsetPercent the same on the month's last midnight
 * @param selfDischargeMilliamp mean
 * @param sensorOffsetMillivolt voltage reading minus truth at 3.3 V, mean
 * @param finding the cause that was put in, as it stands at the month's end
 */
public record TruthRow(
    YearMonth month,
    int cell,
    double capacityAh,
    double lastCapacityAh,
    double capacityRelative,
    double resistance1sMilliohm,
    double resistance10sMilliohm,
    double resistance30sMilliohm,
    double resistance90sMilliohm,
    double jointMilliohm,
    double chargeOffsetPercent,
    double lastChargeOffsetPercent,
    double selfDischargeMilliamp,
    double sensorOffsetMillivolt,
    Finding finding) {}
