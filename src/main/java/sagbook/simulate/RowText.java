package sagbook.simulate;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;

/**
 * Writes rows as comma-separated text: time with its offset, current in A, then all cells'
 * millivolt, °C and bleed percent, as far as they are logged.
 */
final class RowText {
  private final byte[] buffer = new byte[1 << 16];
  private final OutputStream out;
  private final ZoneOffset offset;
  private final Logged logged;
  private final byte[] offsetText;
  private long day = Long.MIN_VALUE;
  private byte[] dayText = new byte[0];
  private int length;

  RowText(OutputStream out, ZoneOffset offset, Logged logged) {
    this.logged = logged;
    this.out = out;
    this.offset = offset;
    this.offsetText = ascii(offset.getId());
  }

  void header(int cells) throws IOException {
    StringBuilder header = new StringBuilder(logged.current() ? "time,current_a" : "time");
    appendColumns(header, cells, "_mv");
    appendColumns(header, logged.temperature() ? cells : 0, "_temp_c");
    appendColumns(header, logged.bleed() ? cells : 0, "_bleed_percent");
    put(ascii(header.append('\n').toString()));
    flush();
  }

  private static void appendColumns(StringBuilder header, int cells, String quantity) {
    for (int i = 1; i <= cells; i++) {
      header.append(i < 10 ? ",cell0" : ",cell").append(i).append(quantity);
    }
  }

  void row(LogRow row) throws IOException {
    if (length > buffer.length - 2_048) {
      flush();
    }
    putTime(row.timeS);
    if (logged.current()) {
      put(',');
      putFraction(row.currentTenths, 10, 1);
    }
    for (int millivolt : row.millivolt) {
      put(',');
      putWhole(millivolt);
    }
    for (int i = 0; logged.temperature() && i < row.halfDegrees.length; i++) {
      put(',');
      putFraction(row.halfDegrees[i], 2, 5);
    }
    for (int i = 0; logged.bleed() && i < row.bleedPercent.length; i++) {
      put(',');
      putWhole(row.bleedPercent[i]);
    }
    put('\n');
  }

  private void putTime(long timeS) {
    long local = timeS + offset.getTotalSeconds();
    long today = Math.floorDiv(local, 86_400L);
    if (today != day) {
      day = today;
      dayText =
          ascii(LocalDateTime.ofEpochSecond(today * 86_400, 0, ZoneOffset.UTC).toLocalDate() + "T");
    }
    int second = (int) Math.floorMod(local, 86_400L);
    put(dayText);
    putTwo(second / 3600);
    put(':');
    putTwo(second / 60 % 60);
    put(':');
    putTwo(second % 60);
    put(offsetText);
  }

  private void putTwo(int number) {
    put((char) ('0' + number / 10));
    put((char) ('0' + number % 10));
  }

  /** A number given in parts of one, where one part is so many tenths: 41 halves are 20.5. */
  private void putFraction(int number, int partsOfOne, int tenthsOfPart) {
    int size = Math.abs(number);
    if (number < 0) {
      put('-');
    }
    putWhole(size / partsOfOne);
    put('.');
    put((char) ('0' + size % partsOfOne * tenthsOfPart));
  }

  private void putWhole(int number) {
    int rest = number;
    if (rest < 0) {
      put('-');
      rest = -rest;
    }
    int divisor = 1;
    while (rest / divisor >= 10) {
      divisor *= 10;
    }
    for (; divisor > 0; divisor /= 10) {
      put((char) ('0' + rest / divisor % 10));
    }
  }

  private void put(char character) {
    buffer[length++] = (byte) character;
  }

  private void put(byte[] text) {
    System.arraycopy(text, 0, buffer, length, text.length);
    length += text.length;
  }

  void flush() throws IOException {
    out.write(buffer, 0, length);
    length = 0;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
