package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.service.SteppedService;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Reading;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The wall clock is set while readings come: recorded, and nothing is reordered. */
final class ClockIT {
  private static final int STATIONS = 4;
  private static final long[] STEPS_SECONDS = {3_600, -7_200, 2, -2, 86_400};

  @TempDir Path directory;

  @Test
  void stepsAreRecordedAndNothingIsReordered() throws Exception {
    try (Scene scene = new Scene(directory, STATIONS)) {
      scene.take(ServiceProcess.start(command(scene.rig), scene.rig.log()));
      scene.awaitReadings(STATIONS);
      for (long step : STEPS_SECONDS) {
        scene.service().say(Long.toString(step));
        scene.awaitReadings(5 * STATIONS);
      }
      scene.prove();
      recorded(scene.rig);
    }
  }

  private static List<String> command(Rig rig) throws Exception {
    Path tests =
        Path.of(SteppedService.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    List<String> command = ServiceProcess.briefJarAnd(File.pathSeparator + tests);
    command.add(SteppedService.class.getName());
    command.add(rig.data().toString());
    command.add(rig.config().toString());
    return command;
  }

  /** Each station tells each step, with what the clock said before and after, to a second. */
  private static void recorded(Rig rig) {
    try (Store store = Stores.openForReading(rig.data())) {
      for (int station = 0; station < STATIONS; station++) {
        List<Incident> steps =
            store.incidents().ofStation("S" + station, Long.MAX_VALUE, 100).stream()
                .filter(each -> each.kind() == Incident.Kind.CLOCK_STEPPED)
                .toList();
        assertEquals(STEPS_SECONDS.length, steps.size(), steps::toString);
        for (int i = 0; i < STEPS_SECONDS.length; i++) {
          Incident step = steps.get(steps.size() - 1 - i);
          assertEquals((double) STEPS_SECONDS[i], (step.toMicros() - step.fromMicros()) / 1e6, 0.5);
        }
      }
      List<Reading> all = store.readings().all(0, 10_000);
      long told = all.stream().filter(each -> each.clock() == ClockState.STEPPED).count();
      assertEquals((long) STATIONS * STEPS_SECONDS.length, told);
      assertTrue(all.stream().anyMatch(each -> each.clock() == ClockState.STEADY));
    }
  }
}
