package sagbook.logfile;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipException;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/**
 * The first lines of a file, from which its dialect and columns are worked out.
 *
 * @param charset of the text
 * @param lines physical lines, first to last, whole
 */
record Head(Charset charset, List<String> lines) {
  private static final int MOST_BYTES = 1 << 18;
  private static final int MOST_LINES = 400;

  Head {
    lines = List.copyOf(lines);
  }

  static Head read(LogSource source) throws InputProblem {
    byte[] bytes;
    try (InputStream raw = source.openRaw();
        InputStream in = LogSource.unpack(raw)) {
      bytes = in.readNBytes(MOST_BYTES);
    } catch (IOException e) {
      throw unreadable(source, e);
    }
    if (bytes.length == 0) {
      throw InputProblem.input("problem.log.empty", InputProblem.quoted(source.name()));
    }
    refuseBinary(source, bytes);
    Charset charset = charset(bytes);
    List<String> lines = new ArrayList<>();
    try (LineReader reader = open(new ByteArrayInputStream(bytes), charset, source.name())) {
      while (lines.size() < MOST_LINES && reader.next()) {
        lines.add(reader.line());
      }
    } catch (IOException e) {
      throw unreadable(source, e);
    }
    if (bytes.length == MOST_BYTES && lines.size() > 1 && lines.size() < MOST_LINES) {
      lines.remove(lines.size() - 1);
    }
    return new Head(charset, lines);
  }

  static InputProblem unreadable(LogSource source, IOException e) {
    String key = "problem.log.unreadable";
    if (e instanceof ExpansionGuard.TooMuch) {
      key = "problem.log.expands";
    } else if (e instanceof ZipException || e instanceof EOFException) {
      key = "problem.log.damaged";
    } else if (e instanceof NoSuchFileException) {
      key = "problem.log.gone";
    }
    return InputProblem.input(e, key, InputProblem.quoted(source.name()));
  }

  /** A reader of lines that starts behind a byte order mark. */
  static LineReader open(InputStream in, Charset charset, String name) throws IOException {
    CharsetDecoder decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    InputStreamReader reader = new InputStreamReader(new MarkSkippingStream(in), decoder);
    return new LineReader(reader, name);
  }

  private static void refuseBinary(LogSource source, byte[] bytes) throws InputProblem {
    String kind = "";
    String start = new String(bytes, 0, Math.min(bytes.length, 8), StandardCharsets.ISO_8859_1);
    if (start.startsWith("\u0089PNG")) {
      kind = "problem.log.kind.png";
    } else if (start.startsWith("\u00ff\u00d8\u00ff")) {
      kind = "problem.log.kind.jpeg";
    } else if (start.startsWith("%PDF")) {
      kind = "problem.log.kind.pdf";
    } else if (start.startsWith("SQLite")) {
      kind = "problem.log.kind.database";
    } else if (start.startsWith("PAR1")) {
      kind = "problem.log.kind.parquet";
    } else if (!startsWithMark(bytes) && utf16(bytes).isEmpty() && hasBinary(bytes)) {
      kind = "problem.log.kind.binary";
    }
    if (!kind.isEmpty()) {
      throw InputProblem.input(
          "problem.log.binary", InputProblem.quoted(source.name()), Words.english().say(kind));
    }
  }

  private static boolean hasBinary(byte[] bytes) {
    int strange = 0;
    int zeros = 0;
    for (byte b : bytes) {
      boolean control = b > 0 && b < 32 && b != '\t' && b != '\n' && b != '\r';
      strange += control ? 1 : 0;
      zeros += b == 0 ? 1 : 0;
    }
    // A card that lost power in mid-write leaves a block of zeros.
    return strange > bytes.length / 100 + 2 || zeros > bytes.length / 2;
  }

  private static boolean startsWithMark(byte[] b) {
    return b.length >= 2
        && ((b[0] == (byte) 0xff && b[1] == (byte) 0xfe)
            || (b[0] == (byte) 0xfe && b[1] == (byte) 0xff));
  }

  private static Charset charset(byte[] bytes) {
    if (startsWithMark(bytes)) {
      return bytes[0] == (byte) 0xff ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_16BE;
    }
    Optional<Charset> wide = utf16(bytes);
    if (wide.isPresent()) {
      return wide.get();
    }
    CharsetDecoder strict = StandardCharsets.UTF_8.newDecoder();
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    boolean valid = !strict.decode(ByteBuffer.wrap(bytes), out, false).isError();
    return valid ? StandardCharsets.UTF_8 : Charset.forName("windows-1252");
  }

  /** UTF-16 without a mark: every other byte of plain text is 0. */
  private static Optional<Charset> utf16(byte[] bytes) {
    int pairs = Math.min(bytes.length, 4096) / 2;
    int evenZeros = 0;
    int oddZeros = 0;
    for (int i = 0; i < pairs; i++) {
      evenZeros += bytes[2 * i] == 0 ? 1 : 0;
      oddZeros += bytes[2 * i + 1] == 0 ? 1 : 0;
    }
    if (pairs < 4) {
      return Optional.empty();
    }
    if (oddZeros > pairs * 0.8 && evenZeros < pairs * 0.05) {
      return Optional.of(StandardCharsets.UTF_16LE);
    }
    if (evenZeros > pairs * 0.8 && oddZeros < pairs * 0.05) {
      return Optional.of(StandardCharsets.UTF_16BE);
    }
    return Optional.empty();
  }

  /** The lines again, one by one. */
  LineReader reopen() {
    return new LineReader(new StringReader(String.join("\n", lines)), "");
  }

  /** The name of the text's coding, in plain words. */
  String charsetWords() {
    return charset.name().toUpperCase(Locale.ROOT);
  }
}
