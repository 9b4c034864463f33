package sagbook.estimate;

/** What can be wrong with a temperature reading. */
public sealed interface TemperatureFault {
  /** Nothing seen. */
  record None() implements TemperatureFault {}

  /** No temperature logged for this cell. */
  record NotLogged() implements TemperatureFault {}

  /**
   * Something is wrong.
   *
   * @param words what, in a plain clause ("has not moved from 21.5 °C for 12 days")
   */
  record Seen(String words) implements TemperatureFault {}
}
