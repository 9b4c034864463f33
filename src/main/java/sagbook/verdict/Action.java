package sagbook.verdict;

/**
 * What can be done about a cell or a battery, the first to be done first: what is dangerous, then
 * what is cheap, then what costs a cell.
 */
public enum Action {
  STOP_AND_ISOLATE("stop and isolate"),
  CHECK_SENSOR("check the sensor"),
  MEND_JOINT("tighten or clean the joint"),
  REBALANCE("rebalance"),
  RUN_TEST("run a test"),
  PLAN_REPLACEMENT("plan a replacement"),
  WATCH("watch"),
  NOTHING("nothing");

  private final String words;

  Action(String words) {
    this.words = words;
  }

  /** The words that results.json uses. */
  public String words() {
    return words;
  }
}
