package sagbook.verdict;

/** How soon somebody has to do something; decides the exit code. */
public enum Severity {
  /** Nothing to do. */
  WELL,
  /** Something needs attention in the coming weeks; a joint, before high loads are used again. */
  ATTENTION,
  /** Limits were exceeded: act now. */
  ACT_NOW
}
