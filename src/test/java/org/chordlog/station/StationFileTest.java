package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

final class StationFileTest {
  @Test
  void readsWhatIsGivenAndTakesDefaultsForTheRest() {
    List<StationSettings> stations = StationFile.parse(StationFiles.GOOD, "test");
    StationSettings first = stations.get(0);
    assertEquals("three-roll bender", first.machine());
    SerialSettings serial = (SerialSettings) first.link();
    assertEquals(4800, serial.rate());
    assertEquals(SerialSettings.Parity.EVEN, serial.parity());
    assertEquals(SerialSettings.StopBits.ONE, serial.stopBits());
    assertEquals(BuiltInProfile.SIGNED_MM_LINES.profile(), first.profile());
    assertEquals(new ZeroRule(4, ZeroRule.Policy.REFUSE, ZeroRule.Policy.REFUSE), first.zero());
    StationSettings second = stations.get(1);
    assertEquals(new TcpSettings("10.1.2.3", 4001), second.link());
    assertEquals("rolls-2", second.machine());
  }

  @TestFactory
  Stream<DynamicTest> eachFaultNamesItsField() {
    return Stream.of(
            fault("name: rolls-1", "name: ''", "stations[0].name"),
            fault("rate: 4800", "rate: fast", "stations[0].link.rate"),
            fault("rate: 4800", "rate: 3", "stations[0].link.rate"),
            fault("rate: 4800", "rats: 4800", "stations[0].link.rats"),
            fault("kind: serial", "kind: string", "stations[0].link.kind"),
            fault("parity: even", "parity: sometimes", "stations[0].link.parity"),
            fault("/dev/indicator", "indicator", "stations[0].link.port"),
            fault("signed-mm-lines", "mm", "stations[0].profile"),
            fault("resolutionMm: 0.001", "resolutionMm: -1", "stations[0].indicator.resolutionMm"),
            fault(
                "resolutionMm: 0.001", "resolutionMm: 1e999", "stations[0].indicator.resolutionMm"),
            fault("travelMm: 12.7", "travelMm: [1]", "stations[0].indicator.travelMm"),
            fault("three-roll bender", "b".repeat(201), "stations[0].machine"),
            fault("three-roll bender", "\"three\\nrolls\"", "stations[0].machine"),
            fault("name: long", "name: " + "l".repeat(201), "stations[0].bridge.name"),
            fault("spanMm: 200", "spanMm: -200", "stations[0].bridge.spanMm"),
            fault("spanMm: 200", "spanMm: 8", "stations[0].bridge.footRadiusMm"),
            fault("mode: settled", "mode: guessed", "stations[0].capture.mode"),
            fault("bandMm: 0.004", "bandMm: 0.0001", "stations[0].capture.bandMm"),
            fault("maximumAgeHours: 4", "maximumAgeHours: 0", "stations[0].zero.maximumAgeHours"),
            fault("whenStale: refuse", "whenStale: no", "stations[0].zero.whenStale"),
            fault("name: rolls-2", "name: rolls-1", "stations[1].name"),
            fault("port: 4001", "port: 70000", "stations[1].link.port"),
            fault("host: 10.1.2.3", "host: ''", "stations[1].link.host"),
            fault("unit: inch", "unit: ell", "stations[1].profile.unit"),
            fault("kind: terminator", "kind: hope", "stations[1].profile.framing.kind"),
            fault(
                "indicator: {resolutionMm: 0.01", "indicators: {resolutionMm: 0.01", "indicators"))
        .map(each -> DynamicTest.dynamicTest(each.wrong(), each::check));
  }

  private static Case fault(String right, String wrong, String field) {
    assertTrue(StationFiles.GOOD.contains(right), right);
    return new Case(right, wrong, field);
  }

  private record Case(String right, String wrong, String field) {
    void check() {
      BadInput refused =
          assertThrows(
              BadInput.class,
              () -> StationFile.parse(StationFiles.GOOD.replace(right, wrong), "test"));
      assertTrue(
          refused.faults().stream().anyMatch(f -> f.field().endsWith(field)), refused.getMessage());
      refused.faults().forEach(f -> assertTrue(!f.allowed().toString().isBlank(), f.toString()));
    }
  }

  @Test
  void tellsAllFaultsAtOnce() {
    String bad =
        StationFiles.GOOD
            .replace("rate: 4800", "rate: fast, colour: red")
            .replace("spanMm: 200", "spanMm: -200")
            .replace("port: 4001", "port: 0");
    BadInput refused = assertThrows(BadInput.class, () -> StationFile.parse(bad, "test"));
    assertEquals(
        List.of(
            "stations[0].link.colour",
            "stations[0].link.rate",
            "stations[0].bridge.spanMm",
            "stations[1].link.port"),
        refused.faults().stream().map(Fault::field).toList());
  }

  @Test
  void saysWhatIsNoStationFile() {
    assertFault("config", () -> StationFile.parse("stations: [", "test"));
    assertFault("stations", () -> StationFile.parse("", "test"));
    assertFault("stations", () -> StationFile.parse("stations: 3", "test"));
    assertFault("config", () -> StationFile.parse("stations: []\nstations: []\n", "test"));
    assertFault("config", () -> StationFile.read(Path.of("/does/not/exist.yaml")));
  }

  /** What a person wrote, and the first sentence that comes of it. */
  @Test
  void messagesNameWhatWasWrittenAndWhere() {
    assertSays("spanMm: 200", "spanMm: 200,5", "bridge.5 follows a comma, which ends a value");
    assertSays("spanMm: 200, ", "", "stations[0].bridge.spanMm is missing");
    assertSays("travelMm: 12.7", "travel: 12.7", "stations[0].indicator.travelMm is missing");
    assertSays("travelMm: 12.7", "travelMm: 5.0E-4", "travelMm: 0.0005 is within one step");
    assertSays("    capture", "\tcapture", "test line 8 column 1 has a tab");
    assertSays("stations:", "{{{", "test line 1 column ");
    assertSays("host: 10.1.2.3", "host: '10.1.2.3:4001'", "link.host: 10.1.2.3:4001 has a port");
    assertSays("port: /dev/indicator, ", "", "stations[0].link.port is missing");
    assertSays("bandMm: 0.004", "restSeconds: 400", "capture.restSeconds: 400.0 is longer than");
  }

  @Test
  void aPortOfTwoStationsAndAChannelThatNeverComesAreRefused() {
    assertSays(
        "link: {kind: tcp, host: 10.1.2.3, port: 4001}",
        "link: {kind: serial, port: /dev/indicator}",
        "stations[1].link: /dev/indicator is the port of station rolls-1 too");
    assertSays(
        "profile: signed-mm-lines",
        "profile: signed-mm-lines\n    channel: 20",
        "channel: 20 is a channel that the profile never gives");
    assertSays(
        "profile: signed-mm-lines",
        "profile: two-value-mm-lines\n    combine: {kind: mean, first: 1, second: 3}",
        "combine.second: 3 is a channel that the profile never gives");
  }

  @Test
  void aFileOfTenMegabytesIsRefusedByItsSizeWithoutBeingRead(@TempDir Path folder)
      throws Exception {
    Path file = folder.resolve("stations.yaml");
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.writeBytes(StationFiles.GOOD);
      large.setLength(10_000_000);
    }
    BadInput refused = assertThrows(BadInput.class, () -> StationFile.read(file));
    Fault fault = refused.faults().get(0);
    assertEquals("config", fault.field());
    assertEquals("is too large", fault.problem().toString());
  }

  @Test
  void faultsOfAFileHaveTheirPlace(@TempDir Path folder) throws Exception {
    String bad =
        StationFiles.GOOD
            .replace("rate: 4800", "rats: 4800")
            .replace("capture: {mode: settled", "capture:\n      mode: guessed\n      #{")
            .replace("spanMm: 200, ", "")
            .replace("port: 4001", "port: 70000");
    Path file = Files.writeString(folder.resolve("stations.yaml"), bad);
    BadInput refused = assertThrows(BadInput.class, () -> StationFile.read(file));
    assertEquals(
        List.of(
            placed(bad, "stations[0].link.rats", "rats: 4800"),
            placed(bad, "stations[0].bridge.spanMm", "bridge:"),
            placed(bad, "stations[0].capture.mode", "mode: guessed"),
            placed(bad, "stations[1].link.port", "port: 70000")),
        refused.faults().stream()
            .map(f -> f.field() + f.problem().toString().replaceFirst(".*( \\(line.*\\))", "$1"))
            .toList());
  }

  /** As an editor counts: the first line and the first column are 1. */
  private static String placed(String yaml, String field, String key) {
    List<String> lines = yaml.lines().toList();
    int line = 0;
    while (!lines.get(line).contains(key)) {
      line++;
    }
    int column = lines.get(line).indexOf(key) + 1;
    return field + " (line " + (line + 1) + " column " + column + ")";
  }

  private static void assertSays(String right, String wrong, String sentence) {
    assertTrue(StationFiles.GOOD.contains(right), right);
    BadInput refused =
        assertThrows(
            BadInput.class,
            () ->
                StationFile.parse(
                    StationFiles.GOOD.replaceFirst(Pattern.quote(right), wrong), "test"));
    String said = String.valueOf(refused.getMessage());
    assertTrue(said.contains(sentence), said);
    assertFalse(said.matches("(?s).*(org\\.|com\\.|java\\.).*"), said);
  }

  private static void assertFault(String field, Runnable read) {
    BadInput refused = assertThrows(BadInput.class, read::run);
    assertEquals(field, refused.faults().get(0).field());
  }
}
