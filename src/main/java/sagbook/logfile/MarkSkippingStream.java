package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;

/** Leaves out a byte order mark at the start of a stream. */
final class MarkSkippingStream extends PushbackInputStream {
  MarkSkippingStream(InputStream in) throws IOException {
    super(in, 3);
    byte[] start = new byte[3];
    int got = in.readNBytes(start, 0, 3);
    int mark = markLength(start, got);
    if (got > mark) {
      unread(start, mark, got - mark);
    }
  }

  private static int markLength(byte[] b, int got) {
    if (got == 3 && b[0] == (byte) 0xef && b[1] == (byte) 0xbb && b[2] == (byte) 0xbf) {
      return 3;
    }
    boolean wide =
        got >= 2
            && ((b[0] == (byte) 0xff && b[1] == (byte) 0xfe)
                || (b[0] == (byte) 0xfe && b[1] == (byte) 0xff));
    return wide ? 2 : 0;
  }
}
