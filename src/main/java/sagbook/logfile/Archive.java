package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import sagbook.issue.InputProblem;

/** Lists the logs within a zip archive. Nothing is ever unpacked to disk. */
final class Archive {
  private static final int MOST_ENTRIES = 2000;

  private Archive() {}

  static boolean isArchive(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] start = in.readNBytes(4);
      return start.length == 4 && start[0] == 'P' && start[1] == 'K' && start[2] == 3;
    } catch (IOException e) {
      return false;
    }
  }

  static List<LogSource> list(String name, Path file) throws InputProblem {
    List<LogSource> found = new ArrayList<>();
    try (ZipFile archive = new ZipFile(file.toFile())) {
      if (archive.size() > MOST_ENTRIES) {
        throw InputProblem.input("problem.archive.many", InputProblem.quoted(name));
      }
      if (archive.getEntry("[Content_Types].xml") != null) {
        throw InputProblem.input("problem.archive.document", InputProblem.quoted(name));
      }
      Enumeration<? extends ZipEntry> entries = archive.entries();
      while (entries.hasMoreElements()) {
        ZipEntry entry = entries.nextElement();
        if (!entry.isDirectory() && isLog(entry.getName())) {
          String shown = name + "/" + entry.getName();
          found.add(new LogSource(shown, file, Optional.of(entry.getName()), false));
        }
      }
    } catch (IOException | IllegalArgumentException e) {
      throw InputProblem.input(e, "problem.archive.damaged", InputProblem.quoted(name));
    }
    if (found.isEmpty()) {
      throw InputProblem.input("problem.archive.empty", InputProblem.quoted(name));
    }
    found.sort(Comparator.comparing(LogSource::name));
    return found;
  }

  private static boolean isLog(String entry) {
    String last = entry.substring(entry.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
    return !last.startsWith(".") && !entry.startsWith("__MACOSX/");
  }
}
