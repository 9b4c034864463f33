package sagbook.record;

import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import sagbook.model.Estimate;

/** What is told of a bank as a whole. */
public final class BankFigure {
  private BankFigure() {}

  /** A quantity with an interval. */
  public enum Estimated {
    MEDIAN_CAPACITY_AH("median_capacity_ah", b -> b.estimates().medianCapacityAh()),
    STRING_USABLE_AH("string_usable_ah", b -> b.estimates().stringUsableAh()),
    STRING_BALANCED_AH("string_balanced_ah", b -> b.estimates().stringBalancedAh()),
    USABLE_KWH("usable_kwh", b -> b.prospect().usableKWh()),
    EVENING_MINUTES("evening_minutes", b -> b.prospect().eveningMinutes()),
    STRING_SAG_V("string_sag_v", b -> b.prospect().sagV()),
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
    HOURS("hours", b -> b.evidence().stress().hours()),
    CHARGED_AH("charged_ah", b -> b.evidence().stress().chargedAh()),
    DISCHARGED_AH("discharged_ah", b -> b.evidence().stress().dischargedAh()),
    CHARGED_KWH("charged_kwh", b -> b.evidence().stress().chargedKWh()),
    DISCHARGED_KWH("discharged_kwh", b -> b.evidence().stress().dischargedKWh()),
    FULL_CHARGE_DAYS("full_charge_days", FullCharges::days),
    HIGHEST_DISCHARGE_A("highest_discharge_a", b -> b.evidence().stress().highestDischargeA()),
    EVENING_LOAD_W("evening_load_w", b -> b.prospect().use().eveningLoadW().orElse(Double.NaN));

    private final String key;

    @SuppressWarnings("ImmutableEnumChecker") // a function without state
    private final ToDoubleFunction<BankResult> of;

    Counted(String key, ToDoubleFunction<BankResult> of) {
      this.key = key;
      this.of = of;
    }

    public String key() {
      return key;
    }

    /** NaN when it was not logged. */
    public double of(BankResult bank) {
      return of.applyAsDouble(bank);
    }
  }
}
