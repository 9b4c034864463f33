package sagbook.record;

import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import sagbook.evidence.Stress;
import sagbook.model.Estimate;

/** What is told of a bank as a whole. */
public final class BankFigure {
  private BankFigure() {}

  /** A quantity with an interval. */
  public enum Estimated {
    MEDIAN_CAPACITY_AH("median_capacity_ah", b -> b.estimates().medianCapacityAh()),
    STRING_USABLE_AH("string_usable_ah", b -> b.estimates().stringUsableAh()),
    STRING_BALANCED_AH("string_balanced_ah", b -> b.estimates().stringBalancedAh()),
    ACTIVATION_ENERGY_KJ_PER_MOL(
        "activation_energy_kj_per_mol", b -> b.estimates().activationEnergyKilojoulePerMole());

    private final String key;

    @SuppressWarnings("ImmutableEnumChecker") // a function without state
    private final Function<BankResult, Estimate> of;

    Estimated(String key, Function<BankResult, Estimate> of) {
      this.key = key;
      this.of = of;
    }

    public String key() {
      return key;
    }

    public Estimate of(BankResult bank) {
      return of.apply(bank);
    }
  }

  /** A sum or an extreme over the period, read off the log. */
  public enum Counted {
    HOURS("hours", Stress::hours),
    CHARGED_AH("charged_ah", Stress::chargedAh),
    DISCHARGED_AH("discharged_ah", Stress::dischargedAh),
    CHARGED_KWH("charged_kwh", Stress::chargedKWh),
    DISCHARGED_KWH("discharged_kwh", Stress::dischargedKWh),
    HIGHEST_DISCHARGE_A("highest_discharge_a", Stress::highestDischargeA);

    private final String key;

    @SuppressWarnings("ImmutableEnumChecker") // a function without state
    private final ToDoubleFunction<Stress> of;

    Counted(String key, ToDoubleFunction<Stress> of) {
      this.key = key;
      this.of = of;
    }

    public String key() {
      return key;
    }

    /** NaN when it was not logged. */
    public double of(BankResult bank) {
      return of.applyAsDouble(bank.evidence().stress());
    }
  }
}
