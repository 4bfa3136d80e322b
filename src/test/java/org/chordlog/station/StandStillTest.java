package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.measure.Incident;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is stopped while its indicator sends: the gap is recorded when it goes on. */
@Tag("slow")
final class StandStillTest {
  private static final byte[] LINE = "+01.234\r\n".getBytes(StandardCharsets.US_ASCII);
  @TempDir Path directory;

  @Test
  void aStopOfSomeSecondsIsRecordedAndOneOfASecondIsNot() throws Exception {
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      Path data = directory.resolve("data");
      Process service = service(data, terminal);
      try {
        Await.until(terminal::connected);
        stopped(service, terminal, 1_000);
        long looks = looks(service);
        Await.until(() -> looks(service) > looks, () -> "the program does not run again");
        long before = micros();
        stopped(service, terminal, 4_000);
        Await.until(() -> sent(terminal) && !incidents(data).isEmpty());
        Incident gap = incidents(data).get(0);
        assertEquals(List.of(gap), incidents(data));
        assertEquals(Incident.Kind.STOOD_STILL, gap.kind());
        assertTrue(gap.toMicros() - gap.fromMicros() >= 3_900_000, gap::toString);
        assertTrue(gap.fromMicros() > before - 600_000, gap::toString);
        assertTrue(gap.toMicros() < micros(), gap::toString);
      } finally {
        service.destroyForcibly();
        Await.end(service);
      }
    }
  }

  private Process service(Path data, PseudoTerminal terminal) throws Exception {
    Path port = directory.resolve("port");
    terminal.publish(port);
    String yaml =
        """
        stations:
          - name: %s
            link: {kind: serial, port: %s}
            profile: signed-mm-lines
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
        """
            .formatted(LineRig.STATION, port);
    Path file = Files.writeString(directory.resolve("stations.yaml"), yaml);
    return Children.start(
        Children.program(LineServiceProcess.class, "128m", data, file).inheritIO());
  }

  private static void stopped(Process service, PseudoTerminal terminal, long millis)
      throws Exception {
    signal(service, "-STOP");
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
    Await.until(() -> sent(terminal) && System.nanoTime() > until);
    signal(service, "-CONT");
  }

  private static void signal(Process service, String which) throws Exception {
    Process kill = new ProcessBuilder("kill", which, String.valueOf(service.pid())).start();
    assertEquals(0, kill.waitFor());
  }

  /** How often the thread that watches for a standstill has gone to sleep. */
  private static long looks(Process service) throws IOException {
    try (Stream<Path> threads = Files.list(Path.of("/proc", service.pid() + "", "task"))) {
      Path watch = threads.filter(StandStillTest::watches).findFirst().orElseThrow();
      String slept =
          Files.readAllLines(watch.resolve("status")).stream()
              .filter(line -> line.startsWith("voluntary_ctxt_switches"))
              .findFirst()
              .orElseThrow();
      return Long.parseLong(slept.replaceAll("\\D", ""));
    }
  }

  private static boolean watches(Path thread) {
    try {
      return Files.readString(thread.resolve("comm")).strip().equals("stand-still");
    } catch (IOException e) {
      return false; // it has ended
    }
  }

  /** One more value; true. */
  private static boolean sent(PseudoTerminal terminal) throws IOException {
    int unused = terminal.write(LINE);
    return true;
  }

  private static List<Incident> incidents(Path data) {
    try (Store store = Stores.openForReading(data)) {
      return store.incidents().ofStation(LineRig.STATION, Long.MAX_VALUE, 10);
    }
  }

  private static long micros() {
    return StationClock.system().wallMicros();
  }
}
