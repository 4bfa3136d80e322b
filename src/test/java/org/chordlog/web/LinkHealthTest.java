package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Indicator;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/**
 * What an indicator sends, or no longer sends, by the health of the real service: never well while
 * nothing can be measured, well again afterwards, and one incident for all of that time.
 */
@Tag("slow")
final class LinkHealthTest {
  private static final String NAME = "B";
  @TempDir private Path directory;
  private Served served;
  private PseudoTerminal terminal;

  /** Number of the newest incident from before the first value. */
  private long earlier;

  @BeforeEach
  void start() throws Exception {
    served = new Served(directory.resolve("data"));
    Path port = directory.resolve("port");
    terminal = PseudoTerminal.open();
    terminal.publish(port);
    served.stations.add(
        StationSettings.of(
                NAME,
                SerialSettings.of(port.toString()),
                BuiltInProfile.CHANNEL_MM_LINES.profile(),
                new Indicator(0.001, 0.003, 12.7))
            .channel(2)
            .silenceSeconds(1.0)
            .build());
    whileSending("2:+01.000\r\n", () -> status().equals("WELL"));
    earlier = incidents().stream().mapToLong(Incident::id).max().orElse(0);
  }

  @AfterEach
  void stop() {
    served.close();
    terminal.close();
  }

  private String status() throws Exception {
    return served.json("/health").get("status").asText();
  }

  private String state() {
    return served.stations.status(NAME).link().name();
  }

  private void whileSending(String frame, Callable<Boolean> until) throws Exception {
    byte[] bytes = frame.getBytes(StandardCharsets.US_ASCII);
    Await.until(
        () -> {
          terminal.write(bytes);
          return until.call();
        },
        () -> served.json("/health").get("reasons"));
  }

  private List<Incident> incidents() {
    return served.store.incidents().ofStation(NAME, Long.MAX_VALUE, 10).stream()
        .filter(incident -> incident.id() > earlier)
        .toList();
  }

  /** Says why while it lasts, all the time; is well again after a good value. */
  private void lasts(String state, String word, Callable<Boolean> step) throws Exception {
    Await.until(() -> step.call() && state().equals(state));
    long from = System.nanoTime();
    Await.until(
        () -> {
          boolean unused = step.call();
          JsonNode health = served.json("/health");
          assertNotEquals("WELL", health.get("status").asText(), health.toString());
          assertTrue(health.get("reasons").toString().contains(word), health.toString());
          assertEquals(state, state());
          return System.nanoTime() - from > 3_000_000_000L;
        });
    long lasted = (System.nanoTime() - from) / 1_000;
    whileSending("2:+01.000\r\n", () -> status().equals("WELL"));
    Await.until(() -> !incidents().isEmpty());
    List<Incident> all = incidents();
    assertEquals(1, all.size(), all.toString());
    assertEquals(state, all.get(0).kind().name());
    assertTrue(all.get(0).toMicros() - all.get(0).fromMicros() >= lasted, all.toString());
  }

  private Callable<Boolean> sends(String frame) {
    byte[] bytes = frame.getBytes(StandardCharsets.US_ASCII);
    return () -> {
      try {
        terminal.write(bytes);
        return true;
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
    };
  }

  @WaitingTest
  void sendingButNothingCanBeRead() throws Exception {
    lasts("UNREADABLE", "2:+0.03937", sends("2:+0.03937\r\n"));
  }

  @WaitingTest
  void valuesButNoneOfTheChannelThatMeasures() throws Exception {
    lasts("OTHER_CHANNEL", "none of channel 2", sends("1:+01.000\r\n"));
  }

  /** Through several reopenings of the port. */
  @WaitingTest
  void nothingComes() throws Exception {
    long before = served.stations.status(NAME).counts().reopenings();
    lasts("SILENT", "station " + NAME, () -> true);
    assertTrue(served.stations.status(NAME).counts().reopenings() > before + 1);
  }
}
