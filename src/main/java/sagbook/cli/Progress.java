package sagbook.cli;

import java.io.Console;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** A line that says how far a job is once it has taken a second; silent off a terminal. */
final class Progress implements AutoCloseable {
  private static final long FIRST_AFTER_NS = 1_000_000_000L;
  private static final long NEXT_AFTER_NS = 200_000_000L;

  private final PrintWriter err;
  private final boolean shown;
  private final LongSupplier nanoClock;
  private long nextNs;
  private int width;

  Progress(PrintWriter err, boolean shown, LongSupplier nanoClock) {
    this.err = err;
    this.shown = shown;
    this.nanoClock = nanoClock;
    this.nextNs = nanoClock.getAsLong() + FIRST_AFTER_NS;
  }

  /** Shown only when somebody watches. */
  static Progress watched(PrintWriter err) {
    return new Progress(err, isTerminal(System.console()), System::nanoTime);
  }

  /** From Java 22 on there is a console without a terminal, too; it says so itself. */
  private static boolean isTerminal(@Nullable Console console) {
    if (console == null) {
      return false;
    }
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true;
    } catch (IllegalAccessException | InvocationTargetException e) {
      return false;
    }
  }

  /** Says how far the job is, at most five times a second. */
  void at(String text) {
    if (!shown || nanoClock.getAsLong() < nextNs) {
      return;
    }
    nextNs = nanoClock.getAsLong() + NEXT_AFTER_NS;
    overwrite(text);
  }

  private void overwrite(String text) {
    err.print("\r" + text + " ".repeat(Math.max(0, width - text.length())));
    err.flush();
    width = text.length();
  }

  /** Clears the line. */
  @Override
  public void close() {
    if (width > 0) {
      overwrite("");
      err.print("\r");
      err.flush();
    }
  }
}
