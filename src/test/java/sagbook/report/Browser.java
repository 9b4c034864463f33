package sagbook.report;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window: Debian's Chromium, where it is installed. */
final class Browser implements AutoCloseable {
  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts one, or skips the test where there is none. */
  static Browser start() {
    Optional<File> chromium = onPath("chromium");
    Optional<File> chromedriver = onPath("chromedriver");
    Assumptions.assumeTrue(
        chromium.isPresent() && chromedriver.isPresent(),
        "no chromium with chromedriver on this machine");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.orElseThrow());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--window-size=1000,1200");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable("browser", Level.ALL);
    logs.enable("performance", Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(chromedriver.orElseThrow()).build();
    return new Browser(new ChromeDriver(service, options));
  }

  private static Optional<File> onPath(String program) {
    String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
    return Stream.of(path.split(Pattern.quote(File.pathSeparator), -1))
        .map(folder -> new File(folder, program))
        .filter(File::canExecute)
        .findFirst();
  }

  ChromeDriver driver() {
    return driver;
  }

  void open(Path page) {
    driver.get(page.toUri().toString());
  }

  /** Runs a function body in the page. */
  Object run(String script, Object... arguments) {
    Object answer = driver.executeScript(script, arguments);
    return answer == null ? "" : answer;
  }

  /** Asks for the page in light or dark, for screen or paper. */
  void media(String type, String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            type,
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  void width(int pixels) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", pixels, "height", 800, "deviceScaleFactor", 1, "mobile", false));
  }

  List<String> console() {
    return driver.manage().logs().get("browser").getAll().stream()
        .map(LogEntry::getMessage)
        .toList();
  }

  /** Addresses that were asked for over a network. */
  List<String> requests() {
    return driver.manage().logs().get("performance").getAll().stream()
        .map(LogEntry::getMessage)
        .filter(message -> message.contains("Network.requestWillBeSent"))
        .filter(message -> !message.contains("\"url\":\"file:"))
        .toList();
  }

  /**
   * What axe-core finds, one line a rule; empty when all is well.
   *
   * @param rules which it asks, as it takes them: {} for those that it asks by itself
   */
  String axe(String rules) throws IOException {
    try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
      if (in == null) {
        throw new IOException("axe.min.js is not on the class path");
      }
      driver.executeScript(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
    Object found =
        driver.executeAsyncScript(
            "const done = arguments[0];"
                + "axe.run(document, Object.assign({resultTypes: ['violations']}, "
                + rules
                + ")).then(r => done(r.violations"
                + ".map(v => v.id + ': ' + v.nodes.map(n => n.target + ' ' + n.failureSummary)"
                + ".slice(0, 3).join(' | ')).join('\\n')));");
    return String.valueOf(found);
  }

  @Override
  public void close() {
    driver.quit();
  }
}
