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
 * jar, it takes nearly half off what each further start of the same jar costs. A virtual machine
 * that the file does not fit passes over it.
 */
final class ClassArchive {
  private static final int READINGS = 6;
  private static final List<String> ASKED =
      List.of(
          "/health",
          "/metrics",
          "/api/stations",
          "/api/jobs",
          "/api/jobs/1/statistics?scope=job",
          "/api/jobs/1/charts/INDIVIDUALS?width=800&height=400",
          "/api/jobs/1/readings.csv");

  private ClassArchive() {}

  /**
   * The option that uses it; makes it where it is missing or older than the jar. While another
   * process makes it, none is used: to wait would take longer than a start without.
   */
  static synchronized String option(Path jar, List<String> options) {
    Path archive = jar.resolveSibling("chordlog.jsa");
    try (FileChannel lock =
            FileChannel.open(
                jar.resolveSibling("chordlog.jsa.lock"),
                StandardOpenOption.CREATE,
                StandardOpenOption.WRITE);
        FileLock held = lock.tryLock()) {
      Path none = jar.resolveSibling("chordlog.jsa.none");
      if (held != null && !fits(archive, jar) && !fits(none, jar)) {
        tryToMake(archive, none, jar, options);
      }
      return fits(archive, jar) ? "-XX:SharedArchiveFile=" + archive : "-Xshare:auto";
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean fits(Path archive, Path jar) throws IOException {
    return Files.exists(archive)
        && Files.getLastModifiedTime(archive).compareTo(Files.getLastModifiedTime(jar)) > 0;
  }

  /** Some machines of Java end abruptly where they write one: then programs start without. */
  private static void tryToMake(Path archive, Path none, Path jar, List<String> options)
      throws IOException {
    try {
      make(archive, jar, options);
    } catch (AssertionError e) {
      System.err.println("programs start without an archive of classes: " + e);
      Files.writeString(none, e.toString());
    }
  }

  /** By a service that measures and answers once. */
  private static void make(Path archive, Path jar, List<String> options) throws IOException {
    Path folder = Files.createTempDirectory("class-archive");
    Path made = archive.resolveSibling("chordlog.jsa.part");
    List<String> program = new ArrayList<>(ServiceProcess.java(jar.toString()));
    program.addAll(1, options);
    program.add(1, "-XX:ArchiveClassesAtExit=" + made);
    program.add("org.chordlog.Main");
    try (Scene scene = new Scene(folder, 1)) {
      scene.take(ServiceProcess.start(ServiceProcess.serving(scene.rig, program), scene.rig.log()));
      scene.awaitReadings(READINGS);
      for (String path : ASKED) {
        String unused = scene.service().body(path);
      }
      scene.stop();
    } catch (Exception e) {
      throw new IOException("no archive of classes: " + e, e);
    } finally {
      Directories.delete(folder);
    }
    Files.move(made, archive, StandardCopyOption.REPLACE_EXISTING);
  }
}
