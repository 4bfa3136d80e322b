package org.chordlog.harness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * The classes of the jar as the virtual machine has them once they are read: made once beside the
 * jar, it takes a third off what each further start of the same jar costs. A virtual machine that
 * the file does not fit passes over it.
 */
final class ClassArchive {
  private ClassArchive() {}

  /** The option that uses it; makes it where it is missing or older than the jar. */
  static synchronized String option(Path jar, List<String> options) {
    Path archive = jar.resolveSibling("chordlog.jsa");
    try (FileChannel lock =
            FileChannel.open(
                jar.resolveSibling("chordlog.jsa.lock"),
                StandardOpenOption.CREATE,
                StandardOpenOption.WRITE);
        FileLock held = lock.lock()) {
      if (held.isValid() && !fits(archive, jar)) {
        make(archive, jar, options);
      }
      return "-XX:SharedArchiveFile=" + archive;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean fits(Path archive, Path jar) throws IOException {
    return Files.exists(archive)
        && Files.getLastModifiedTime(archive).compareTo(Files.getLastModifiedTime(jar)) > 0;
  }

  private static void make(Path archive, Path jar, List<String> options) throws IOException {
    Path data = Files.createTempDirectory("class-archive");
    Path made = archive.resolveSibling("chordlog.jsa.part");
    List<String> command = new ArrayList<>(ServiceProcess.java(jar.toString()));
    command.addAll(1, options);
    command.add(1, "-XX:ArchiveClassesAtExit=" + made);
    command.addAll(List.of("org.chordlog.Main", "serve", "--json", "--port", "0"));
    command.addAll(List.of("--data", data.resolve("data").toString()));
    try (ServiceProcess service = ServiceProcess.start(command, data.resolve("log"))) {
      service.stop();
    } catch (Exception e) {
      throw new IOException("no archive of classes: " + e, e);
    } finally {
      Directories.delete(data);
    }
    Files.move(made, archive, StandardCopyOption.REPLACE_EXISTING);
  }
}
