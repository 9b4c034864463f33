package sagbook.simulate;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.YearMonth;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/** Writes a simulated log as one file a month, {@code 2026-06.csv} or {@code 2026-06.csv.gz}. */
final class MonthlyFiles implements RowSink, Closeable {
  private final Path folder;
  private final boolean compressed;
  private @Nullable RowText text;
  private @Nullable OutputStream out;
  private long monthEndsS = Long.MIN_VALUE;

  MonthlyFiles(Path folder, boolean compressed) {
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
    close();
    var offset = Simulation.offset();
    YearMonth month = YearMonth.from(Instant.ofEpochSecond(row.timeS).atOffset(offset));
    monthEndsS = month.plusMonths(1).atDay(1).atStartOfDay().toEpochSecond(offset);
    OutputStream file =
        Files.newOutputStream(folder.resolve(month + (compressed ? ".csv.gz" : ".csv")));
    OutputStream target = compressed ? new Smallest(file) : new BufferedOutputStream(file);
    RowText writer = new RowText(target, offset);
    out = target;
    text = writer;
    writer.header(row.millivolt.length);
    return writer;
  }

  @Override
  public void close() throws IOException {
    if (text != null && out != null) {
      text.flush();
      out.close();
      text = null;
      out = null;
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
