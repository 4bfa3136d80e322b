package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Sample;
import org.chordlog.profile.CountScale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where the length of a running section comes from: in the station file, and for each value. */
final class FeedTest {
  @TempDir private Path directory;

  private static StationSettings read(String feed) {
    return StationFile.parse(LineRig.yaml(Path.of("/dev/none"), feed), "test").get(0);
  }

  private static FeedSettings feed(StationSettings settings) {
    return Objects.requireNonNull(settings.feed());
  }

  @Test
  void aStationFileSaysWhereTheLengthComesFrom() throws Exception {
    StationSettings wheel =
        read(
            "{length: channel, channel: 2, mmPerCount: 0.1, counterBits: 16, reversed: true,"
                + " wheelFace: inner, bothWays: true, pieceMm: 6000, leadInMm: 250}");
    assertEquals(
        new FeedSettings(
            LengthSource.CHANNEL,
            new FeedSettings.Wheel(2, new CountScale(0.1, true, 16), Face.INNER),
            null,
            null,
            400,
            true,
            new KnownLengths(6000.0, 250.0, null, null, null)),
        wheel.feed());
    StationSettings stated = read("{length: speed, mmPerSecond: 100, pieceMm: 6000}");
    Path file = directory.resolve("stations.yaml");
    StationFileWriter.append(file, wheel);
    assertEquals(List.of(wheel), StationFile.parse(Files.readString(file), "test"));
    assertEquals(LengthSource.SPEED, feed(stated).length());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{length: channel}|feed.channel",
        "{length: channel, channel: 1}|feed.channel",
        "{length: channel, channel: 7}|feed.channel",
        "{length: pulse}|feed.length",
        "{length: speed, pieceMm: 6000}|feed.mmPerSecond",
        "{length: speed, mmPerSecond: 100}|feed.pieceMm",
        "{length: none, channel: 2}|feed.channel",
        "{length: channel, channel: 2, counterBits: 12}|bits",
        "{length: channel, channel: 2, pieceMm: -1}|pieceMm",
        "{length: wheel}|feed.length",
        "{length: link, mmPerCount: 0.1}|stations[0].feed.channel",
        "{length: link, channel: 0}|stations[0].feed.link",
        "{length: link, link: {port: /dev/e}}|stations[0].feed.profile",
        "{length: link, link: {port: e}, profile: count-lines}|stations[0].feed.link.port",
        "{length: link, link: {port: /dev/e, rate: 1}, profile: count-lines}|feed.link.rate",
        "{length: link, link: {port: /dev/e, bits: 8}, profile: count-lines}|feed.link.bits",
        "{length: link, link: {kind: radio}, profile: count-lines}|stations[0].feed.link.kind",
        "{length: link, link: {port: /dev/e}, profile: nothing}|stations[0].feed.profile",
        "{length: link, link: {port: /dev/e}, profile: {framing: {kind: no}}}|feed.profile.framing.kind",
        "{length: link, link: {port: /dev/e}, profile: count-lines, channel: 3}|feed.channel",
        "{length: link, link: {port: /dev/e}, profile: count-lines, delayMs: 300}|feed.delayMs",
        "{length: link, link: {port: /dev/e}, profile: count-lines, silenceSeconds: -1}|feed.silence",
        "{length: link, link: {port: /dev/none}, profile: count-lines}|stations[0].feed.link",
        "{length: none, link: {port: /dev/e}, profile: count-lines}|stations[0].feed.link",
        "{length: channel, channel: 2, delayMs: 5}|stations[0].feed.delayMs",
        "{length: none, mmPerCount: 0.1}|stations[0].feed.channel",
      })
  void whatIsWrongIsNamed(String feed, String field) {
    BadInput refusal = assertThrows(BadInput.class, () -> read(feed));
    assertTrue(refusal.toString().contains(field), refusal::toString);
  }

  /** With line and column of the key as it is written, and without faults that follow from it. */
  @Test
  void aFaultOfTheLengthsLinkNamesItsPlace() {
    String yaml =
        LineRig.yaml(
            Path.of("/dev/none"),
            "{length: link, link: {port: /dev/e, rate: 1}, profile: nothing}");
    BadInput refusal =
        assertThrows(
            BadInput.class, () -> StationFile.parseFile(yaml, directory.resolve("stations.yaml")));
    List<String> faults = refusal.faults().stream().map(Object::toString).toList();
    assertEquals(2, faults.size(), faults::toString);
    String line = String.valueOf(yaml.lines().toList().indexOf(lineOf(yaml, "feed:")) + 1);
    assertTrue(faults.get(0).contains("stations[0].feed.link.rate"), faults::toString);
    assertTrue(faults.get(0).contains("(line " + line + " column "), faults::toString);
    assertTrue(faults.get(1).contains("stations[0].feed.profile"), faults::toString);
    assertTrue(faults.get(1).contains("(line " + line + " column "), faults::toString);
  }

  private static String lineOf(String yaml, String key) {
    return yaml.lines().filter(line -> line.contains(key)).findFirst().orElseThrow();
  }

  @Test
  void aLengthMayComeOnALinkOfItsOwn() throws Exception {
    StationSettings own =
        read(
            "{length: link, link: {kind: tcp, host: plc, port: 4001}, profile: count-lines,"
                + " mmPerCount: 0.1, delayMs: 12.5, silenceSeconds: 5}");
    FeedSettings.CountLink link = Objects.requireNonNull(feed(own).link());
    assertEquals(new TcpSettings("plc", 4001), link.link());
    assertEquals(12.5, link.delayMs());
    assertEquals(0, Objects.requireNonNull(feed(own).wheel()).channel(), "the only one");
    Path file = directory.resolve("stations.yaml");
    StationFileWriter.append(file, own);
    assertEquals(List.of(own), StationFile.parse(Files.readString(file), "test"));
    StationSettings fields = StationFile.parse(Files.readString(file), "test").get(0);
    assertEquals(own, fields);
  }

  @Test
  void noOtherStationReadsTheLinkOfALength() {
    String first =
        LineRig.yaml(
            Path.of("/dev/none"), "{length: link, link: {port: /dev/e}, profile: count-lines}");
    String second =
        LineRig.yaml(Path.of("/dev/e"), "{length: none}")
            .replace("stations:\n", "")
            .replace("outfeed", "infeed");
    BadInput refusal =
        assertThrows(BadInput.class, () -> StationFile.parse(first + second, "test"));
    assertTrue(refusal.toString().contains("stations[1].link"), refusal::toString);
    assertTrue(refusal.toString().contains("outfeed"), refusal::toString);
  }

  @Test
  void passingNeedsAFeedAndNothingElseHasOne() {
    String yaml = LineRig.yaml(Path.of("/dev/none"), "{length: none}");
    assertThrows(
        BadInput.class,
        () -> StationFile.parse(yaml.replace("mode: passing", "mode: settled"), ""));
    assertThrows(
        BadInput.class, () -> StationFile.parse(yaml.replace("feed: {length: none}", ""), ""));
  }

  private static Sample sample(long nanos, double mm, int channel) {
    return new Sample(1, nanos, 0, Math.round(mm * 1e6), channel, false);
  }

  private static List<Long> lengths(String feed, Sample... samples) {
    List<Long> lengths = new ArrayList<>();
    FeedStream stream =
        FeedStreams.of(feed(read(feed)), null, (depth, length) -> lengths.add(length));
    for (Sample each : samples) {
      if (stream.isLength(each.channel())) {
        stream.length(each);
      } else {
        stream.depth(each);
      }
    }
    return lengths;
  }

  @Test
  void aDepthHasTheLengthOfItsOwnFrame() {
    Sample[] frames = {
      sample(1, 1.5, 1),
      sample(1, 70, 2),
      sample(2, 1.5, 1), // its length was not readable
      sample(3, 81, 2),
      sample(3, 1.5, 1),
      sample(3, 1.5, 1),
      sample(3, 82, 2),
    };
    assertEquals(
        List.of(7_000_000L, 8_100_000L, 8_200_000L),
        lengths("{length: channel, channel: 2, mmPerCount: 0.1}", frames));
    assertEquals(
        List.of(-7_000_000L, -8_100_000L, -8_200_000L),
        lengths("{length: channel, channel: 2, mmPerCount: 0.1, reversed: true}", frames));
  }

  @Test
  void aCounterThatStartsOverGoesOn() {
    assertEquals(
        List.of(6_553_500_000L, 6_553_700_000L),
        lengths(
            "{length: channel, channel: 2, mmPerCount: 0.1, counterBits: 16}",
            sample(1, 1, 1),
            sample(1, 65_535, 2),
            sample(2, 1, 1),
            sample(2, 1, 2)));
  }

  @Test
  void decimalsOfAWheelThatSendsMillimetresCount() {
    assertEquals(
        List.of(12_345_600L),
        lengths("{length: channel, channel: 2}", sample(1, 1, 1), sample(1, 12.3456, 2)));
  }

  @Test
  void aStatedFeedMakesTheLengthOfTheTime() {
    assertEquals(
        List.of(0L, 100_000_000L),
        lengths(
            "{length: speed, mmPerSecond: 100, pieceMm: 6000}",
            sample(0, 1, 1),
            sample(1_000_000_000L, 1, 1)));
  }
}
