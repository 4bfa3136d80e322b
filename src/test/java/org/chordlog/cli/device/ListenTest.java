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
import java.util.function.IntFunction;
import org.chordlog.WaitingTest;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.harness.Ran;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Over a real pseudo-terminal. */
@Tag("slow")
final class ListenTest {
  private PseudoTerminal terminal;
  private Path port;
  private volatile boolean stop;
  private Thread indicator;
  private final StringBuilder out = new StringBuilder();
  private final StringBuilder err = new StringBuilder();

  @BeforeEach
  void open() throws IOException {
    Assumptions.assumeTrue(PseudoTerminal.available(), "no pseudo-terminals here");
    terminal = PseudoTerminal.open();
    port = terminal.path();
    indicator = new Thread(this::send, "indicator");
  }

  @AfterEach
  void close() throws Exception {
    stop = true;
    indicator.join();
    terminal.close();
  }

  private volatile IntFunction<String> form =
      i -> String.format(Locale.ROOT, "%+07.3f\r\n", 3 + 6 * Math.sin(i / 9.0));
  private volatile long everyMillis = 20;

  private void send() {
    try {
      for (int i = 0; !stop; i++) {
        terminal.write(form.apply(i).getBytes(StandardCharsets.US_ASCII));
        LockSupport.parkNanos(everyMillis * 1_000_000);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private int listen(String... more) {
    Ran ran = Ran.command(List.of("listen", port.toString()), more);
    out.append(ran.out());
    err.append(ran.err());
    return ran.code();
  }

  @WaitingTest
  void showsWhatComesAndProposesTheProfile() {
    indicator.start();
    assertEquals(0, listen("--seconds", "1"), () -> err.toString());
    String text = out.toString();
    assertTrue(text.contains("\\r\\n"), text);
    assertTrue(text.contains("0D 0A"), text);
    assertTrue(text.contains("fixed-mm-lines"), text);
    assertTrue(text.contains("to be confirmed: the unit is mm"), text);
  }

  @WaitingTest
  void jsonAndSavedStation(@TempDir Path folder) throws IOException {
    indicator.start();
    port = Path.of("").toAbsolutePath().relativize(port);
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
    assertEquals(terminal.path().toString(), saved.link().target());
    assertEquals(0.001, saved.indicator().resolutionMm());
    String first = "# the bender in bay 2\n" + Files.readString(file);
    Files.writeString(file, first);
    assertEquals(2, listen(options), "the name is taken");
    options[8] = "second";
    assertEquals(2, listen(options), "the port is another station's");
    assertTrue(err.toString().contains("is the port of station bender too"), err.toString());
    assertEquals(first, Files.readString(file));
  }

  @WaitingTest
  void aStandingPlungerIsAskedToBeMoved() {
    form = i -> i % 3 == 0 ? "+05.123\r\n" : "+05.124\r\n";
    indicator.start();
    assertEquals(1, listen("--seconds", "0.5", "--rate", "9600"));
    assertTrue(out.toString().contains("Move the plunger in and out"), out.toString());
    assertTrue(out.toString().contains("a standing value does not show its form"));
  }

  @WaitingTest
  void fewValuesASecondAreListenedToForLonger() {
    everyMillis = 400;
    form = i -> String.format(Locale.ROOT, "%9.3f\r\n", 3 + 6 * Math.sin(i / 2.0));
    indicator.start();
    assertEquals(0, listen("--seconds", "1", "--rate", "9600"), () -> out.toString());
  }

  @WaitingTest
  void theOneThatIsPickedIsSavedAndReadAtOnce(@TempDir Path folder) {
    form = i -> String.format(Locale.ROOT, "%+07d\r\n", Math.round(300 + 600 * Math.sin(i / 9.0)));
    indicator.start();
    Path file = folder.resolve("stations.yaml");
    assertEquals(
        0,
        listen(
            "--seconds",
            "1.5",
            "--rate",
            "9600",
            "--pick",
            "2",
            "--save",
            file.toString(),
            "--name",
            "bender",
            "--travel",
            "12.5",
            "--permissible-error",
            "0.02"),
        () -> err.toString());
    assertEquals(0.01, StationFile.read(file).get(0).indicator().resolutionMm());
    assertTrue(out.toString().contains("to be confirmed: one count is 0.01 mm"), out.toString());
    assertTrue(out.toString().matches("(?s).*It reads [+\u2212][0-9.]+ mm now.*"), out.toString());
  }

  @WaitingTest
  void silenceIsAFaultAndBadInputIsTold() {
    assertEquals(1, listen("--seconds", "0.2", "--rate", "9600"));
    assertTrue(out.toString().contains("Nothing came"));
    assertEquals(2, listen("--seconds", "0"));
    assertEquals(2, listen("--request", "\\q"));
    assertTrue(err.toString().contains("unknown escape"));
  }
}
