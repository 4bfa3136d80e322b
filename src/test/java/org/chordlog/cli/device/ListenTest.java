package org.chordlog.cli.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.harness.Ran;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Over a real pseudo-terminal. */
final class ListenTest {
  private PseudoTerminal terminal;
  private volatile boolean stop;
  private Thread indicator;
  private final StringBuilder out = new StringBuilder();
  private final StringBuilder err = new StringBuilder();

  @BeforeEach
  void open() throws IOException {
    Assumptions.assumeTrue(PseudoTerminal.available(), "no pseudo-terminals here");
    terminal = PseudoTerminal.open();
    indicator = new Thread(this::send, "indicator");
  }

  @AfterEach
  void close() throws Exception {
    stop = true;
    indicator.join();
    terminal.close();
  }

  private void send() {
    try {
      for (int i = 0; !stop; i++) {
        String line = String.format(Locale.ROOT, "%+07.3f\r\n", (i * 37 % 200 - 100) / 7.0);
        terminal.write(line.getBytes(StandardCharsets.US_ASCII));
        LockSupport.parkNanos(20_000_000);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private int listen(String... more) {
    Ran ran = Ran.command(List.of("listen", terminal.path().toString()), more);
    out.append(ran.out());
    err.append(ran.err());
    return ran.code();
  }

  @Test
  void showsWhatComesAndProposesTheProfile() {
    indicator.start();
    assertEquals(0, listen("--seconds", "1"), () -> err.toString());
    String text = out.toString();
    assertTrue(text.contains("\\r\\n"), text);
    assertTrue(text.contains("0D 0A"), text);
    assertTrue(text.contains("fixed-mm-lines"), text);
    assertTrue(text.contains("to be confirmed: the unit is mm"), text);
  }

  @Test
  void jsonAndSavedStation(@TempDir Path folder) throws IOException {
    indicator.start();
    Path file = folder.resolve("stations.yaml");
    String[] options = {
      "--json",
      "--seconds",
      "1",
      "--rate",
      "9600",
      "--save",
      file.toString(),
      "--name",
      "bender",
      "--travel",
      "12.5",
      "--permissible-error",
      "0.02"
    };
    assertEquals(0, listen(options), () -> err.toString());
    JsonNode document = new JsonMapper().readTree(out.toString().strip());
    assertEquals("fixed-mm-lines", document.at("/proposals/0/name").asText());
    assertEquals(9600, document.at("/link/rate").asInt());
    StationSettings saved = StationFile.read(file).get(0);
    assertEquals(BuiltInProfile.FIXED_MM_LINES.profile(), saved.profile());
    assertEquals(0.001, saved.indicator().resolutionMm());
    String first = "# the bender in bay 2\n" + Files.readString(file);
    Files.writeString(file, first);
    assertEquals(2, listen(options), "the name is taken");
    options[8] = "second";
    assertEquals(2, listen(options), "the port is another station's");
    assertTrue(err.toString().contains("is the port of station bender too"), err.toString());
    assertEquals(first, Files.readString(file));
  }

  @Test
  void silenceIsAFaultAndBadInputIsTold() {
    assertEquals(1, listen("--seconds", "0.2", "--rate", "9600"));
    assertTrue(out.toString().contains("Nothing came"));
    assertEquals(2, listen("--seconds", "0"));
    assertEquals(2, listen("--request", "\\q"));
    assertTrue(err.toString().contains("unknown escape"));
  }
}
