package sagbook.model;

/** Takes a bank's rows, block after block, in time order. */
@FunctionalInterface
public interface SampleSink {
  /** Takes one block; the block is refilled afterwards. */
  void accept(SampleBlock block);
}
