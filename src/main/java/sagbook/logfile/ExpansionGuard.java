package sagbook.logfile;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongSupplier;

/**
 * Stops unpacking data that grows beyond belief. A log packs to a tenth or twentieth, one that
 * never changes to a two-hundredth; what unpacks to more than 64 MB and 500 times its size was made
 * to fill memory or disk.
 */
final class ExpansionGuard extends FilterInputStream {
  private static final long ALWAYS_ALLOWED = 64L << 20;
  private static final long MOST_RATIO = 500;

  private final LongSupplier packed;
  private long unpacked;

  /** Thrown when there is too much. */
  static final class TooMuch extends IOException {
    private static final long serialVersionUID = 1L;

    TooMuch() {
      super("unpacks to more than 500 times its size");
    }
  }

  ExpansionGuard(InputStream in, CountingStream packed) {
    super(in);
    this.packed = packed::count;
  }

  ExpansionGuard(InputStream in, long packedBytes) {
    super(in);
    this.packed = () -> packedBytes;
  }

  @Override
  public int read() throws IOException {
    int value = super.read();
    grown(value < 0 ? 0 : 1);
    return value;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int got = super.read(buffer, offset, length);
    grown(Math.max(0, got));
    return got;
  }

  private void grown(int bytes) throws TooMuch {
    unpacked += bytes;
    if (unpacked > ALWAYS_ALLOWED && unpacked > MOST_RATIO * packed.getAsLong()) {
      throw new TooMuch();
    }
  }
}
