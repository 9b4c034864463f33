package sagbook.estimate;

import java.util.List;
import java.util.Optional;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.axis.VoltageObserver;
import sagbook.estimate.capacity.CapacityEstimator;
import sagbook.estimate.capacity.CapacityResult;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.Evidence;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.PackDescription;

/**
 * Where a string stood all the time, and what its cells hold by that.
 *
 * @param record thinned record; with a made-up current when none was logged
 * @param slowOhm response of the string's cells some minutes after a step, ohm
 * @param axis charge axis of the string
 * @param capacity charge side of the cells
 */
record StringCharge(
    ThinnedRecord record, double slowOhm, ChargeAxis axis, CapacityResult capacity) {
  /** Age of a response that has settled but for the slowest parts, s. */
  private static final double SETTLED_S = 400;

  /** By the logged current. */
  static StringCharge counted(
      Evidence evidence, PackDescription pack, Optional<StringResponse> response) {
    return of(
        evidence,
        pack,
        evidence.thinned(),
        evidence.thinned(),
        response.map(StringCharge::settled).orElse(0.0),
        Optional.of(evidence.wanderAhInADay()));
  }

  /**
   * By the voltages alone: along the first of the likely curves by which the cells' sizes are told.
   * Along a curve that is none of theirs the cells fit no curve in common, and none is.
   */
  static StringCharge observed(Evidence evidence, PackDescription pack) {
    List<VoltageObserver> observers =
        VoltageObserver.of(evidence.thinned(), ElectrodePair.of(pack), pack.nominalCapacityAh());
    StringCharge first = along(observers.get(0), evidence, pack);
    StringCharge along = first;
    for (int k = 1; k < observers.size() && !along.capacity.tellsSizes(); k++) {
      along = along(observers.get(k), evidence, pack);
    }
    return along.capacity.tellsSizes() ? along : first;
  }

  private static StringCharge along(
      VoltageObserver observer, Evidence evidence, PackDescription pack) {
    return of(
        evidence,
        pack,
        observer.observed(),
        observer.trusted(),
        VoltageObserver.slowOhm(pack.nominalCapacityAh()),
        Optional.empty());
  }

  private static StringCharge of(
      Evidence evidence,
      PackDescription pack,
      ThinnedRecord record,
      ThinnedRecord trusted,
      double slowOhm,
      Optional<Double> wanderAhInADay) {
    ChargeAxis axis =
        AxisBuilder.build(record, evidence.turns(), pack.nominalCapacityAh(), slowOhm);
    CapacityResult capacity =
        new CapacityEstimator(trusted, pack, axis, slowOhm, wanderAhInADay).estimate();
    return new StringCharge(record, slowOhm, axis, capacity);
  }

  /**
   * Settled response, ohm. Response only grows with time; where few steps leave its slow part
   * undetermined, what was reached earlier is the least it can be.
   */
  static double settled(StringResponse response) {
    double most = 0;
    for (double ageS : new double[] {10, 60, SETTLED_S}) {
      most = Math.max(most, response.at(ageS));
    }
    return most;
  }
}
