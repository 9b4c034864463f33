package sagbook.packfile;

import java.util.List;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.Limits;
import sagbook.model.OpenCircuitTable;

/** Reads the keeper's open-circuit table, the arrays of [cell]. */
final class CurveTable {
  private static final String CHARGE = "charge_fraction";
  private static final String VOLT = "open_circuit_v";

  /** How far a table may end short of the rest voltages of full and empty, V. */
  private static final double SHORT_V = 0.02;

  private CurveTable() {}

  static Optional<OpenCircuitTable> read(TomlTable root, Limits limits) throws InputProblem {
    Optional<TomlTable> given = root.table("cell");
    if (given.isEmpty()) {
      return Optional.empty();
    }
    TomlTable cell = given.get();
    cell.allowOnly(CHARGE, VOLT);
    Optional<List<Double>> charge = cell.numbers(CHARGE, 0, 1);
    Optional<List<Double>> volt = cell.numbers(VOLT, 0.5, 6);
    if (charge.isEmpty()) {
      throw cell.missing(CHARGE, CHARGE + " = [0, 0.05, ..., 1]");
    }
    if (volt.isEmpty()) {
      throw cell.missing(VOLT, VOLT + " = [2.5, 3.1, ..., 3.65]");
    }
    check(cell, charge.get(), volt.get(), limits);
    return Optional.of(new OpenCircuitTable(charge.get(), volt.get()));
  }

  private static void check(TomlTable cell, List<Double> charge, List<Double> volt, Limits limits)
      throws InputProblem {
    int n = charge.size();
    if (n < OpenCircuitTable.FEWEST) {
      throw cell.listComplaint(
          CHARGE, "has " + n + " numbers", OpenCircuitTable.FEWEST + " or more from empty to full");
    }
    if (charge.get(0) != 0 || charge.get(n - 1) != 1) {
      throw cell.listComplaint(
          CHARGE,
          "runs from " + charge.get(0) + " to " + charge.get(n - 1),
          "0 for the empty cell first and 1 for the full one last");
    }
    if (volt.size() != n) {
      throw cell.listComplaint(
          VOLT, "has " + volt.size() + " numbers", n + ", as many as " + CHARGE + " has");
    }
    for (int i = 1; i < n; i++) {
      if (!(charge.get(i) > charge.get(i - 1))) {
        throw cell.listComplaint(CHARGE, follows(charge, i), "every number above the one before");
      }
      if (volt.get(i) < volt.get(i - 1)) {
        throw cell.listComplaint(VOLT, follows(volt, i), "no number below the one before");
      }
    }
    double empty = limits.cellEmptyVoltage();
    double full = limits.cellFullVoltage();
    if (volt.get(0) > empty + SHORT_V || volt.get(n - 1) < full - SHORT_V) {
      throw cell.listComplaint(
          VOLT,
          "runs from " + volt.get(0) + " to " + volt.get(n - 1) + " V",
          "rest voltages that reach from cell_empty_v, "
              + empty
              + " V, to cell_full_v, "
              + full
              + " V (measure further, or set those two in [limits])");
    }
  }

  private static String follows(List<Double> list, int i) {
    return "has " + list.get(i) + " after " + list.get(i - 1);
  }
}
