package org.chordlog.cli.common;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.UserPrincipal;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/**
 * The folder that native libraries are unpacked into and loaded from: new at each start, with a
 * name nobody knows before, and open to its owner only, so that no other user of the computer can
 * put code of his own there. It goes with the process; one that a kill left is removed at a later
 * start.
 */
public final class NativeFolder {
  private static final String TEMPORARY = "java.io.tmpdir";
  private static final String SHARED = "chordlog.tmpdir";
  private static final String PREFIX = "chordlog-native-";
  private static final Pattern NAME = Pattern.compile(PREFIX + "(\\d+)-.*");

  private NativeFolder() {}

  /** For this process; call before anything native is used. */
  public static void use() {
    Path shared = Path.of(System.getProperty(TEMPORARY));
    try {
      Path own = Files.createTempDirectory(shared, PREFIX + ProcessHandle.current().pid() + "-");
      System.setProperty(SHARED, shared.toString());
      System.setProperty(TEMPORARY, own.toString());
      for (String property : List.of("org.sqlite.tmpdir", "jna.tmpdir")) {
        if (System.getProperty(property) == null) { // a folder that was named is meant
          System.setProperty(property, own.toString());
        }
      }
      removeLeft(shared, own);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(own), "remove-native"));
    } catch (IOException e) {
      throw new BadInput(
          "java.io.tmpdir",
          shared,
          FileTrouble.writing(e),
          "start with -Djava.io.tmpdir=DIR of a folder that allows programs");
    }
  }

  /** The temporary folder that all programs share. */
  public static Path shared() {
    return Path.of(System.getProperty(SHARED, System.getProperty(TEMPORARY)));
  }

  /** Those of the same user whose process is gone. */
  private static void removeLeft(Path shared, Path own) throws IOException {
    UserPrincipal owner = Files.getOwner(own);
    try (DirectoryStream<Path> all = Files.newDirectoryStream(shared, PREFIX + "*")) {
      for (Path each : all) {
        if (!each.equals(own)
            && left(each)
            && owner.equals(Files.getOwner(each, LinkOption.NOFOLLOW_LINKS))) {
          remove(each);
        }
      }
    }
  }

  private static boolean left(Path folder) {
    Matcher name = NAME.matcher(String.valueOf(folder.getFileName()));
    return name.matches()
        && Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
        && !runs(Long.parseLong(name.group(1)));
  }

  /** In a container each process may have had the number of this one. */
  private static boolean runs(long process) {
    return process != ProcessHandle.current().pid() && ProcessHandle.of(process).isPresent();
  }

  /** Links in it are removed, not followed. */
  private static void remove(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(each);
      }
    } catch (IOException | UncheckedIOException e) {
      // what is left is removed at a later start
    }
  }
}
