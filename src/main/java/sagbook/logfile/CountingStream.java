package sagbook.logfile;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Counts the bytes that were read. */
final class CountingStream extends FilterInputStream {
  private long count;

  CountingStream(InputStream in) {
    super(in);
  }

  long count() {
    return count;
  }

  @Override
  public int read() throws IOException {
    int value = super.read();
    count += value < 0 ? 0 : 1;
    return value;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int got = super.read(buffer, offset, length);
    count += Math.max(0, got);
    return got;
  }
}
