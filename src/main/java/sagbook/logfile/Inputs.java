package sagbook.logfile;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Finds the files that a list of files, folders and patterns stands for. */
final class Inputs {
  /** More files than this in one call are a wrong folder. */
  private static final int MOST_FILES = 20_000;

  private static final int DEEPEST_FOLDER = 12;

  private final Map<String, LogSource> found = new LinkedHashMap<>();

  /** All files, each once, in the order of the arguments and by name within a folder. */
  static List<LogSource> find(List<String> arguments) throws InputProblem {
    Inputs inputs = new Inputs();
    for (String argument : arguments) {
      inputs.take(argument);
    }
    return List.copyOf(inputs.found.values());
  }

  private void take(String argument) throws InputProblem {
    if (argument.equals(StandardInput.ARGUMENT)) {
      add(Words.english().say("problem.standard-input"), StandardInput.file(), true);
      return;
    }
    Path path = path(argument);
    if (path != null && Files.isDirectory(path)) {
      takeFolder(argument, path);
    } else if (path != null && Files.exists(path)) {
      add(argument, path, true);
    } else if (argument.indexOf('*') >= 0 || argument.indexOf('?') >= 0) {
      takePattern(argument);
    } else {
      throw InputProblem.input("problem.input.missing", InputProblem.quoted(argument));
    }
  }

  private static @Nullable Path path(String argument) {
    try {
      return Path.of(argument);
    } catch (InvalidPathException e) {
      return null;
    }
  }

  private void takeFolder(String argument, Path folder) throws InputProblem {
    String prefix = argument.replace('\\', '/').replaceAll("/+$", "");
    List<Path> files = walk(argument, folder, DEEPEST_FOLDER);
    if (files.isEmpty()) {
      throw InputProblem.input("problem.input.empty", InputProblem.quoted(argument));
    }
    for (Path file : files) {
      String inside = folder.relativize(file).toString().replace('\\', '/');
      add(prefix + "/" + inside, file, false);
    }
  }

  private void takePattern(String argument) throws InputProblem {
    String pattern = argument.replace('\\', '/');
    int wild = pattern.indexOf('*') >= 0 ? pattern.indexOf('*') : pattern.length();
    int question = pattern.indexOf('?') >= 0 ? pattern.indexOf('?') : pattern.length();
    int slash = pattern.lastIndexOf('/', Math.min(wild, question));
    String base = slash < 0 ? "" : pattern.substring(0, Math.max(slash, 1));
    Path folder = path(base);
    int before = found.size();
    if (folder != null && Files.isDirectory(folder)) {
      PathMatcher matcher = FileSystems.getDefault().getPathMatcher("glob:" + glob(pattern));
      for (Path file : walk(argument, folder, DEEPEST_FOLDER)) {
        if (matcher.matches(file)) {
          add(file.toString().replace('\\', '/'), file, false);
        }
      }
    }
    if (found.size() == before) {
      throw InputProblem.input("problem.input.pattern", InputProblem.quoted(argument));
    }
  }

  /** Only the star and the question mark are special. */
  private static String glob(String pattern) {
    return pattern.replaceAll("([\\[\\]{}\\\\])", "\\\\$1");
  }

  private static List<Path> walk(String argument, Path folder, int depth) throws InputProblem {
    List<Path> files = new ArrayList<>();
    SimpleFileVisitor<Path> visitor =
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path inner, BasicFileAttributes attributes) {
            return isHidden(inner) && !inner.equals(folder)
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (!isHidden(file) && Files.isRegularFile(file)) {
              files.add(file);
            }
            return files.size() > MOST_FILES ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException failure) {
            return FileVisitResult.CONTINUE;
          }
        };
    try {
      Files.walkFileTree(folder, EnumSet.noneOf(FileVisitOption.class), depth, visitor);
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.input.list", InputProblem.quoted(argument));
    }
    if (files.size() > MOST_FILES) {
      throw InputProblem.input("problem.input.many", InputProblem.quoted(argument));
    }
    files.sort(Comparator.comparing(file -> file.toString().replace('\\', '/')));
    return files;
  }

  private static boolean isHidden(Path path) {
    Path name = path.getFileName();
    return name != null && name.toString().startsWith(".");
  }

  private void add(String name, Path path, boolean named) throws InputProblem {
    if (!Files.isRegularFile(path)) {
      throw InputProblem.input("problem.input.pipe", InputProblem.quoted(name));
    }
    if (!Files.isReadable(path)) {
      throw InputProblem.input("problem.input.forbidden", InputProblem.quoted(name));
    }
    String shown = name.replace('\\', '/');
    String key = path.toAbsolutePath().normalize().toString();
    if (Archive.isArchive(path)) {
      for (LogSource inside : Archive.list(shown, path)) {
        found.putIfAbsent(key + "/" + inside.name(), inside);
      }
      return;
    }
    found.putIfAbsent(key, new LogSource(shown, path, Optional.empty(), named));
  }
}
