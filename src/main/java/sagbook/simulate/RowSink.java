package sagbook.simulate;

import java.io.IOException;

/** Takes the rows of a simulated log in time order; the row is refilled afterwards. */
@FunctionalInterface
interface RowSink {
  void accept(LogRow row) throws IOException;
}
