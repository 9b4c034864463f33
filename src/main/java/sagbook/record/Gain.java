package sagbook.record;

import java.util.function.Function;
import sagbook.model.Estimate;
import sagbook.whatif.Outcome;

/** What a change to the string buys, under the names of results.json and of the tables. */
public enum Gain {
  GAIN_AH("gain_ah", Outcome::gainAh),
  GAIN_EVENING_AH("gain_evening_ah", Outcome::gainEveningAh),
  GAIN_KWH("gain_kwh", Outcome::gainKWh),
  GAIN_EVENING_MINUTES("gain_evening_minutes", Outcome::gainEveningMinutes),
  STRING_SAG_V("string_sag_v", Outcome::sagV),
  LESS_SAG_V("less_sag_v", Outcome::lessSagV);

  private final String key;

  @SuppressWarnings("ImmutableEnumChecker") // a function without state
  private final Function<Outcome, Estimate> of;

  Gain(String key, Function<Outcome, Estimate> of) {
    this.key = key;
    this.of = of;
  }

  /** Name in results.json and in table headers. */
  public String key() {
    return key;
  }

  public Estimate of(Outcome outcome) {
    return of.apply(outcome);
  }
}
