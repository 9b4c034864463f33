package sagbook.model;

/** Where the capacity comes from that distances along the charge axis are shares of. */
public enum CapacitySource {
  /** The keeper told it. */
  TOLD,
  /** It was not told; the string's own size stands for it, as the logged current shows it. */
  FOUND,
  /** It was not told, and the log doesn't show it either: the number means nothing. */
  ASSUMED
}
