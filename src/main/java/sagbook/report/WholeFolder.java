package sagbook.report;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sagbook.wording.Words;

/**
 * Puts a set of files into a folder, all or none.
 *
 * <p>A folder that is not there yet appears by one rename. In one that is there, each file is
 * replaced by a rename after all have been written beside; if a rename fails, those before it are
 * undone. A reader never sees half a file.
 */
final class WholeFolder {
  private static final String STAGE = ".sagbook-";

  private WholeFolder() {}

  /** Writes files, named by their path below the folder; the last one is replaced last. */
  static void write(Path folder, Map<String, byte[]> files) throws IOException {
    Path target = folder.toAbsolutePath().normalize();
    boolean exists = Files.exists(target);
    if (exists && !Files.isDirectory(target)) {
      throw new FileAlreadyExistsException(
          target.toString(), null, Words.english().say("problem.write.file"));
    }
    Path beside = exists ? target : parent(target);
    Files.createDirectories(beside);
    Path stage = Files.createTempDirectory(beside, STAGE);
    try {
      Path whole = stage.resolve("new");
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path path = whole.resolve(file.getKey());
        Files.createDirectories(parent(path));
        Files.write(path, file.getValue());
      }
      if (exists) {
        replace(target, whole, stage.resolve("old"), List.copyOf(files.keySet()));
      } else {
        Files.move(whole, target, StandardCopyOption.ATOMIC_MOVE);
      }
    } finally {
      delete(stage);
    }
  }

  private static void replace(Path target, Path whole, Path old, List<String> names)
      throws IOException {
    Deque<String> done = new ArrayDeque<>();
    try {
      for (String name : names) {
        Path path = target.resolve(name);
        Files.createDirectories(parent(path));
        Files.createDirectories(parent(old.resolve(name)));
        if (Files.isDirectory(path)) {
          throw new FileAlreadyExistsException(
              path.toString(), null, Words.english().say("problem.write.folder"));
        }
        done.push(name);
        if (Files.exists(path)) {
          Files.copy(path, old.resolve(name), StandardCopyOption.COPY_ATTRIBUTES);
        }
        Files.move(
            whole.resolve(name),
            path,
            StandardCopyOption.ATOMIC_MOVE,
            StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException e) {
      undo(target, old, done);
      throw e;
    }
  }

  private static void undo(Path target, Path old, Deque<String> done) throws IOException {
    for (String name : done) {
      Path before = old.resolve(name);
      if (Files.exists(before)) {
        Files.move(before, target.resolve(name), StandardCopyOption.REPLACE_EXISTING);
      } else {
        Files.deleteIfExists(target.resolve(name));
      }
    }
  }

  private static Path parent(Path path) throws IOException {
    Path parent = path.getParent();
    if (parent == null) {
      throw new NotDirectoryException(path.toString());
    }
    return parent;
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
