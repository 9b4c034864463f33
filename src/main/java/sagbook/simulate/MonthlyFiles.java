package sagbook.simulate;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.YearMonth;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * Writes a simulated log as one file a month, {@code 2026-06.csv} or {@code 2026-06.csv.gz}. A file
 * gets its name only when it is whole.
 */
final class MonthlyFiles implements RowSink, Closeable {
  private final Path folder;
  private final Logged logged;
  private final boolean compressed;
  private @Nullable RowText text;
  private @Nullable OutputStream out;
  private @Nullable Path whole;
  private @Nullable Path part;
  private long monthEndsS = Long.MIN_VALUE;

  MonthlyFiles(Path folder, Logged logged, boolean compressed) {
    this.logged = logged;
    this.folder = folder;
    this.compressed = compressed;
  }

  @Override
  public void accept(LogRow row) throws IOException {
    RowText writer = text;
    if (writer == null || row.timeS >= monthEndsS) {
      writer = open(row);
    }
    writer.row(row);
  }

  private RowText open(LogRow row) throws IOException {
    finish();
    var offset = Simulation.offset();
    YearMonth month = YearMonth.from(Instant.ofEpochSecond(row.timeS).atOffset(offset));
    monthEndsS = month.plusMonths(1).atDay(1).atStartOfDay().toEpochSecond(offset);
    Path name = folder.resolve(month + (compressed ? ".csv.gz" : ".csv"));
    Path unfinished = folder.resolve(name.getFileName() + ".part");
    OutputStream file = Files.newOutputStream(unfinished);
    whole = name;
    part = unfinished;
    OutputStream target = compressed ? new Smallest(file) : new BufferedOutputStream(file);
    RowText writer = new RowText(target, offset, logged);
    out = target;
    text = writer;
    writer.header(row.millivolt.length);
    return writer;
  }

  /** Ends the month that is being written. */
  void finish() throws IOException {
    if (text != null && out != null && part != null && whole != null) {
      text.flush();
      out.close();
      Files.move(part, whole, StandardCopyOption.REPLACE_EXISTING);
      text = null;
      out = null;
      part = null;
    }
  }

  /** Drops a month that was not finished. */
  @Override
  public void close() throws IOException {
    if (out != null && part != null) {
      out.close();
      Files.deleteIfExists(part);
    }
  }

  /** Gzip at its highest level. The header holds no time, so the same rows give the same bytes. */
  private static final class Smallest extends GZIPOutputStream {
    Smallest(OutputStream file) throws IOException {
      super(file, 1 << 16);
      def.setLevel(Deflater.BEST_COMPRESSION);
    }
  }
}
