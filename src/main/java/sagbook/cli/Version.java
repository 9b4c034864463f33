package sagbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine;

/** The program's version, which the build writes into a resource. */
final class Version implements CommandLine.IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"sagbook " + current()};
  }

  static String current() {
    Properties properties = new Properties();
    try (InputStream in = Version.class.getResourceAsStream("/sagbook/version.properties")) {
      if (in != null) {
        properties.load(in);
      }
    } catch (IOException unreadable) {
      return "unknown";
    }
    return properties.getProperty("version", "unknown");
  }
}
