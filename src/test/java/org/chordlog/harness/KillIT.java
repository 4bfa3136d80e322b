package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The service is killed (SIGKILL) at random moments, also while it starts, with eight indicators
 * sending. After each kill the file is checked; at the end also what the running service said of
 * its statistics.
 */
final class KillIT {
  private static final int STATIONS = 8;
  private static final int MOST_READINGS = 60;
  private static final int MOST_START_MILLIS = 1_500;
  private final Random random = new Random(20261125);

  @TempDir Path directory;

  @Test
  void nothingAnnouncedIsLostInFiveKills() throws Exception {
    kill(5);
  }

  @Test
  @Tag("long")
  void nothingAnnouncedIsLostInManyKills() throws Exception {
    kill(Integer.getInteger("chordlog.kills", 200));
  }

  private void kill(int kills) throws Exception {
    try (Scene scene = new Scene(directory, STATIONS)) {
      for (int i = 1; i <= kills; i++) {
        killOnce(scene, i);
        assertEquals(List.of(), scene.proof.faults(scene.rig.data()), "after kill " + i);
        tell(scene, i);
      }
      scene.serve();
      scene.awaitReadings(STATIONS);
      scene.prove();
      String log = scene.service().logged();
      assertFalse(log.contains("passed over"), log);
      System.out.printf(
          "%d kills, %d readings announced, all of them kept; %d kept%n",
          kills, scene.proof.announcedReadings(), scene.proof.keptReadings());
    }
  }

  private static void tell(Scene scene, int kills) {
    if (kills % 100 == 0) {
      System.out.printf(
          "%d kills, %d readings announced so far%n", kills, scene.proof.announcedReadings());
    }
  }

  /** One in five dies before it has said where it is. */
  private void killOnce(Scene scene, int number) throws Exception {
    if (number % 5 == 0) {
      ServiceProcess.killWhileStarting(scene.rig, random.nextInt(MOST_START_MILLIS));
    } else {
      scene.serve();
      scene.awaitReadings(random.nextInt(MOST_READINGS));
      scene.kill();
    }
  }
}
