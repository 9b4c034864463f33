package sagbook.simulate;

import java.time.LocalDate;
import java.util.List;
import sagbook.wording.Words;

/**
 * All that a simulated log follows from.
 *
 * @param name plain word by which it is asked for
 * @param story one sentence: what is wrong and where
 * @param pack the battery
 * @param faults what goes wrong and when
 * @param from first day
 * @param days how many
 * @param cadenceS seconds between rows; divides a day
 * @param readSkewS time between the first board's reading and the last's, s
 * @param noiseMillivolt standard deviation of a voltage reading
 * @param seed of all random numbers
 */
public record Scenario(
    String name,
    String story,
    PackPlan pack,
    List<Fault> faults,
    LocalDate from,
    int days,
    int cadenceS,
    double readSkewS,
    double noiseMillivolt,
    long seed) {
  private static final Words WORDS = Words.english();

  public Scenario {
    faults = List.copyOf(faults);
    if (!(days >= 1 && days <= 7_400)) {
      throw new IllegalArgumentException(
          WORDS.say("problem.simulate.days", Integer.toString(days)));
    }
    if (!(cadenceS >= 1 && cadenceS <= 900 && 86_400 % cadenceS == 0)) {
      throw new IllegalArgumentException(
          WORDS.say("problem.simulate.cadence", Integer.toString(cadenceS)));
    }
    for (Fault fault : faults) {
      if (!(fault.cell() >= 1 && fault.cell() <= pack.cells())) {
        throw new IllegalArgumentException(
            WORDS.say("problem.simulate.fault", Integer.toString(fault.cell())));
      }
    }
  }

  public Scenario withPack(PackPlan other) {
    return new Scenario(
        name, story, other, faults, from, days, cadenceS, readSkewS, noiseMillivolt, seed);
  }

  public Scenario withTime(LocalDate first, int dayCount, int secondsBetweenRows) {
    return new Scenario(
        name,
        story,
        pack,
        faults,
        first,
        dayCount,
        secondsBetweenRows,
        readSkewS,
        noiseMillivolt,
        seed);
  }

  public Scenario withSeed(long other) {
    return new Scenario(
        name, story, pack, faults, from, days, cadenceS, readSkewS, noiseMillivolt, other);
  }

  public Scenario withFaults(List<Fault> others) {
    return new Scenario(
        name, story, pack, others, from, days, cadenceS, readSkewS, noiseMillivolt, seed);
  }
}
