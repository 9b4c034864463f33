package sagbook.logfile;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * One log file.
 *
 * @param name as shown: as given by the keeper, or the folder as given and the file's place in it
 * @param path where it lies
 * @param entry its name within the archive at {@code path}; empty when it is no archive
 * @param named whether the keeper named this very file, so that it may not be passed over
 */
record LogSource(String name, Path path, Optional<String> entry, boolean named) {
  /** The bytes as they lie on disk, or in the archive. */
  InputStream openRaw() throws IOException {
    return entry.isPresent() ? openEntry(entry.get()) : Files.newInputStream(path);
  }

  private InputStream openEntry(String inside) throws IOException {
    ZipFile archive = new ZipFile(path.toFile());
    try {
      ZipEntry found = archive.getEntry(inside);
      if (found == null) {
        throw new NoSuchFileException(path + "/" + inside);
      }
      InputStream in =
          new ExpansionGuard(archive.getInputStream(found), Math.max(1, found.getCompressedSize()));
      return new FilterInputStream(in) {
        @Override
        public void close() throws IOException {
          archive.close();
        }
      };
    } catch (IOException e) {
      archive.close();
      throw e;
    }
  }

  /** Whatever is packed, unpacked. */
  static InputStream unpack(InputStream raw) throws IOException {
    CountingStream counted = new CountingStream(raw);
    BufferedInputStream in = new BufferedInputStream(counted, 1 << 16);
    in.mark(4);
    int first = in.read();
    int second = in.read();
    in.reset();
    return first == 0x1f && second == 0x8b
        ? new ExpansionGuard(new GZIPInputStream(in, 1 << 16), counted)
        : in;
  }
}
