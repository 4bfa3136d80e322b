package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.chordlog.Await;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The disk and the file fail the running service, and come back. */
final class DiskIT {
  private static final int STATIONS = 4;
  private static final int SOME = 40;
  private static final int WAITING = 30;

  @TempDir Path directory;

  /** One after the other; what waited is kept and announced each time. */
  @Test
  void whatADiskWithoutRoomOrALockHoldsUpIsKept() throws Exception {
    try (Scene scene = new Scene(directory, STATIONS)) {
      scene.serve();
      scene.awaitReadings(SOME);
      withoutRoom(scene);
      locked(scene);
      scene.prove();
    }
  }

  /** Writes beyond the limit fail with EFBIG (setrlimit(2)). */
  private static void withoutRoom(Scene scene) throws Exception {
    Limit.files(scene.service().pid(), 4_096);
    untilHeldUp(scene, "does not take writes");
    Limit.lift(scene.service().pid());
    catchesUp(scene);
  }

  /** BEGIN IMMEDIATE in this process, as a program does that forgets to commit. */
  private static void locked(Scene scene) throws Exception {
    String url = "jdbc:sqlite:" + scene.rig.data().resolve(SqliteStore.FILE_NAME);
    try (Connection other = DriverManager.getConnection(url);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      untilHeldUp(scene, "locked");
      statement.execute("ROLLBACK");
    }
    catchesUp(scene);
  }

  /** A file system of 8 MiB that is really full; only where one may be mounted. */
  @Test
  void aFullFileSystemLosesNothing() throws Exception {
    Path data = Files.createDirectory(directory.resolve("data"));
    String[] mount = {"mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", data.toString()};
    assumeTrue(Limit.works(mount), "no right to mount a file system here");
    try (Scene scene = new Scene(directory, STATIONS)) {
      scene.serve();
      scene.awaitReadings(SOME);
      Path filler = data.resolve("filler");
      fill(filler);
      untilHeldUp(scene, "the disk is full");
      Files.delete(filler);
      catchesUp(scene);
      scene.prove();
    } finally {
      Limit.run("umount", data.toString());
    }
  }

  private static void fill(Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      byte[] block = new byte[4_096];
      while (true) {
        out.write(block);
      }
    } catch (IOException full) {
      assertTrue(String.valueOf(full.getMessage()).contains("No space"), full::toString);
    }
  }

  /** Acquisition goes on, health says why, and readings wait. */
  private static void untilHeldUp(Scene scene, String reason) throws Exception {
    scene.awaitReason(reason);
    assertEquals(503, scene.service().get("/health").statusCode());
    assertEquals(204, scene.service().get("/health/live").statusCode());
    Await.until(() -> queued(scene) >= WAITING);
  }

  private static void catchesUp(Scene scene) throws Exception {
    int announced = scene.proof.announcedReadings();
    scene.awaitReady();
    Await.until(() -> scene.proof.announcedReadings() >= announced + WAITING);
    assertEquals(0, scene.service().body("/metrics").lines().filter(DiskIT::lost).count());
  }

  private static boolean lost(String line) {
    return line.startsWith("chordlog_dropped_readings_total{") && !line.endsWith(" 0.0");
  }

  private static int queued(Scene scene) throws Exception {
    return scene.json("/health").get("store").get("queuedCommands").asInt();
  }
}
