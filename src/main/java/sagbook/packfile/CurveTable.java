package sagbook.packfile;

import java.util.List;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.Limits;
import sagbook.model.OpenCircuitTable;
import sagbook.wording.Words;

/** Reads the keeper's open-circuit table, the arrays of [cell]. */
final class CurveTable {
  private static final Words WORDS = Words.english();
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
          CHARGE,
          WORDS.say("problem.curve.count", Integer.toString(n)),
          WORDS.say("problem.curve.fewest", Integer.toString(OpenCircuitTable.FEWEST)));
    }
    if (charge.get(0) != 0 || charge.get(n - 1) != 1) {
      throw cell.listComplaint(
          CHARGE,
          WORDS.say("problem.curve.runs", charge.get(0).toString(), charge.get(n - 1).toString()),
          WORDS.say("problem.curve.ends"));
    }
    if (volt.size() != n) {
      throw cell.listComplaint(
          VOLT,
          WORDS.say("problem.curve.count", Integer.toString(volt.size())),
          WORDS.say("problem.curve.as-many", Integer.toString(n), CHARGE));
    }
    for (int i = 1; i < n; i++) {
      if (!(charge.get(i) > charge.get(i - 1))) {
        throw cell.listComplaint(CHARGE, follows(charge, i), WORDS.say("problem.curve.rises"));
      }
      if (volt.get(i) < volt.get(i - 1)) {
        throw cell.listComplaint(VOLT, follows(volt, i), WORDS.say("problem.curve.never-falls"));
      }
    }
    double empty = limits.cellEmptyVoltage();
    double full = limits.cellFullVoltage();
    if (volt.get(0) > empty + SHORT_V || volt.get(n - 1) < full - SHORT_V) {
      throw cell.listComplaint(
          VOLT,
          WORDS.say("problem.curve.runs.volt", volt.get(0).toString(), volt.get(n - 1).toString()),
          WORDS.say("problem.curve.reach", Double.toString(empty), Double.toString(full)));
    }
  }

  private static String follows(List<Double> list, int i) {
    return WORDS.say("problem.curve.after", list.get(i).toString(), list.get(i - 1).toString());
  }
}
