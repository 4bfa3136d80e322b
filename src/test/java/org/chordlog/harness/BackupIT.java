package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup taken while readings come, a file damaged after it, and the way back. */
final class BackupIT {
  private static final int STATIONS = 4;
  private static final int SOME = 60;

  @TempDir Path directory;

  @Test
  void aDamagedFileIsSetAsideAndTheBackupGoesOn() throws Exception {
    Path backup = directory.resolve("backup.db");
    try (Scene scene = new Scene(directory, STATIONS)) {
      scene.serve();
      scene.awaitReadings(SOME);
      Proof inBackup = scene.proof.copy();
      backup(scene, backup);
      scene.awaitReadings(SOME);
      scene.kill();
      byte[] damaged = scribble(scene.rig.data().resolve(SqliteStore.FILE_NAME));
      saysThatItIsDamaged(scene, damaged);
      command("restore", scene, backup.toString());
      goesOn(scene, inBackup);
    }
  }

  /** From the jar, as another process than the service. */
  private static void backup(Scene scene, Path backup) throws Exception {
    String data = scene.rig.data().toString();
    ServiceProcess.Said said = ServiceProcess.run("backup", "--data", data, backup.toString());
    assertEquals(0, said.exitCode(), said.out());
  }

  private static void command(String name, Scene scene, String... more) {
    Ran ran = Ran.command(List.of(name, "--data", scene.rig.data().toString()), more);
    assertEquals(0, ran.code(), ran.err());
  }

  /** It starts on a new file, says so, and leaves the damaged one as it was. */
  private static void saysThatItIsDamaged(Scene scene, byte[] damaged) throws Exception {
    try (ServiceProcess service = ServiceProcess.serveBriefly(scene.rig)) {
      String health = service.body("/health");
      assertTrue(health.contains("DEGRADED") && health.contains("damaged database"), health);
      service.stop();
    }
    try (Stream<Path> files = Files.walk(scene.rig.data())) {
      Path kept =
          files
              .filter(file -> file.toString().contains("damaged-"))
              .filter(file -> file.endsWith(SqliteStore.FILE_NAME))
              .findFirst()
              .orElseThrow();
      assertEquals(ByteBuffer.wrap(damaged), ByteBuffer.wrap(Files.readAllBytes(kept)));
    }
  }

  private static void goesOn(Scene scene, Proof inBackup) throws Exception {
    assertEquals(List.of(), inBackup.faults(scene.rig.data()));
    command("recompute", scene);
    command("audit", scene);
    try (ServiceProcess service = ServiceProcess.serveBriefly(scene.rig);
        EventNotes notes =
            EventNotes.listen(
                service.address(), "?lastEventId=" + inBackup.lastId(), inBackup::note)) {
      int before = inBackup.announcedReadings();
      org.chordlog.Await.until(() -> inBackup.announcedReadings() >= before + SOME);
      service.stop();
      notes.awaitEnd();
    }
    assertEquals(List.of(), inBackup.faults(scene.rig.data()));
  }

  /** Random bytes over the second half of the file; what it then holds. */
  private static byte[] scribble(Path file) throws Exception {
    byte[] noise = new byte[(int) (Files.size(file) / 2)];
    new Random(7).nextBytes(noise);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(noise), Files.size(file) / 2);
    }
    return Files.readAllBytes(file);
  }
}
