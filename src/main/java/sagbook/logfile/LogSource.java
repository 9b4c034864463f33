package sagbook.logfile;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;

/**
 * One log file.
 *
 * @param name as shown: as given by the keeper, or the folder as given and the file's place in it
 * @param path where it lies
 * @param named whether the keeper named this very file, so that it may not be passed over
 */
record LogSource(String name, Path path, boolean named) {
  /** The bytes as they lie on disk. */
  InputStream openRaw() throws IOException {
    return Files.newInputStream(path);
  }

  /** Whatever is packed, unpacked. */
  static InputStream unpack(InputStream raw) throws IOException {
    BufferedInputStream in = new BufferedInputStream(raw, 1 << 16);
    in.mark(4);
    int first = in.read();
    int second = in.read();
    in.reset();
    return first == 0x1f && second == 0x8b ? new GZIPInputStream(in, 1 << 16) : in;
  }
}
