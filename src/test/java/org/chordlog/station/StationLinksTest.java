package org.chordlog.station;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.harness.SteppingClock;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.Recording;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationStatus.LinkState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Stations on links that stay away, fall silent, are polled, end; and clocks that are set. */
@Tag("slow")
final class StationLinksTest {
  private static final ZeroRule MARKED =
      new ZeroRule(8, ZeroRule.Policy.MARK, ZeroRule.Policy.MARK);

  @TempDir private Path directory;

  private static LinkState state(StationRig rig, String name) {
    return rig.stations.status(name).link();
  }

  private static long samples(StationRig rig, String name) {
    return rig.stations.status(name).counts().samples();
  }

  private static List<Incident.Kind> incidents(StationRig rig, String name) {
    return rig.store.incidents().ofStation(name, Long.MAX_VALUE, 10).stream()
        .map(Incident::kind)
        .toList();
  }

  private static StationSettings settings(
      String name,
      LinkSettings link,
      BuiltInProfile profile,
      CaptureOptions capture,
      double quiet) {
    return StationSettings.of(name, link, profile.profile(), StationRig.INDICATOR)
        .machine("bender")
        .bridge(StationRig.BRIDGE)
        .capture(capture)
        .zero(MARKED)
        .silenceSeconds(quiet)
        .build();
  }

  @WaitingTest
  void aStationWithoutADeviceSaysSoAndDisturbsNoOther() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal good = rig.plugIn("good")) {
      rig.stations.add(rig.settings("bad", StationRig.settled(), MARKED));
      rig.open("good", StationRig.settled(), MARKED);
      StationRig.hold(good, 1, 20);
      Await.until(() -> samples(rig, "good") > 0);
      StationStatus bad = rig.stations.status("bad");
      assertEquals(LinkState.WAITING, bad.link());
      assertTrue(bad.message().contains("does not exist"), bad.message());
      assertThrows(BadInput.class, () -> rig.stations.at("bad").takeZero("tester"));
      assertThrows(
          BadInput.class,
          () -> rig.stations.add(rig.settings("good", StationRig.settled(), MARKED)));
    }
  }

  @WaitingTest
  void aSilentLinkIsOpenedAgainAndTheSilenceRecorded() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("quiet")) {
      SerialSettings link = SerialSettings.of(rig.port("quiet").toString());
      rig.stations.add(
          settings("quiet", link, BuiltInProfile.SIGNED_MM_LINES, StationRig.settled(), 0.3));
      Await.until(() -> rig.stations.status("quiet").counts().reopenings() > 2);
      assertEquals(LinkState.SILENT, state(rig, "quiet"), "until a byte has come");
      assertTrue(device.connected());
      StationRig.hold(device, 1, 20);
      Await.until(() -> state(rig, "quiet") == LinkState.OPEN);
      Await.until(() -> incidents(rig, "quiet").contains(Incident.Kind.SILENT));
      assertEquals(
          1, incidents(rig, "quiet").stream().filter(Incident.Kind.SILENT::equals).count());
    }
  }

  /** The unit key of an indicator that does not name its unit: other decimals, all refused. */
  @WaitingTest
  void whatComesButCanNotBeReadIsSaidWithTheNewestFrame() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("hand")) {
      rig.open("hand", StationRig.settled(), MARKED);
      StationRig.hold(device, 1, 20);
      Await.until(
          () -> {
            device.write("+0.20169\r\n".getBytes(US_ASCII));
            return state(rig, "hand") == LinkState.UNREADABLE;
          });
      String message = rig.stations.status("hand").message();
      assertTrue(message.contains("+0.20169") && message.contains("decimals"), message);
      StationRig.hold(device, 1, 20);
      Await.until(() -> state(rig, "hand") == LinkState.OPEN);
      Await.until(() -> incidents(rig, "hand").contains(Incident.Kind.UNREADABLE));
    }
  }

  @WaitingTest
  void valuesOfAnotherChannelOnlyAreSaid() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("two")) {
      rig.stations.add(
          StationSettings.of(
                  "two",
                  SerialSettings.of(rig.port("two").toString()),
                  BuiltInProfile.CHANNEL_MM_LINES.profile(),
                  StationRig.INDICATOR)
              .channel(2)
              .build());
      Await.until(() -> state(rig, "two") == LinkState.OPEN);
      Await.until(
          () -> {
            device.write("1:+05.123\r\n".getBytes(US_ASCII));
            return state(rig, "two") == LinkState.OTHER_CHANNEL;
          });
      String message = rig.stations.status("two").message();
      assertTrue(message.contains("channel 1, none of channel 2"), message);
    }
  }

  @WaitingTest
  void aPolledIndicatorIsAskedAndItsAnswersAreRead() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("polled")) {
      SerialSettings link = SerialSettings.of(rig.port("polled").toString());
      rig.stations.add(
          settings("polled", link, BuiltInProfile.POLLED_MM_LINES, StationRig.settled(), 0));
      byte[] asked = new byte[64];
      Await.until(
          () -> {
            int count = Math.max(0, device.read(asked));
            if (new String(asked, 0, count, US_ASCII).contains("?")) {
              device.write(StationRig.line(2.5));
            }
            return samples(rig, "polled") >= 5;
          });
      assertEquals(0, rig.stations.status("polled").counts().damagedFrames());
    }
  }

  @WaitingTest
  void aRecordedStreamPlaysOnceAndEnds() throws Exception {
    Path file = directory.resolve("stream.txt");
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      byte[] line = StationRig.line(0.01 * i);
      lines.add(Recording.line(i * 50_000L, line, line.length));
    }
    Files.write(file, lines);
    try (StationRig rig = new StationRig(directory)) {
      rig.stations.add(
          settings(
              "replay",
              new ReplaySettings(file, 0),
              BuiltInProfile.SIGNED_MM_LINES,
              StationRig.settled(),
              0));
      Await.until(() -> state(rig, "replay") == LinkState.STOPPED);
      assertEquals(100, samples(rig, "replay"), "each line begins with its sign: none is cut");
    }
  }

  @WaitingTest
  void aStepOfTheClockIsRecordedAndMarksTheNextReadingButReordersNothing() throws Exception {
    SteppingClock clock = new SteppingClock();
    try (StationRig rig = new StationRig(directory, clock);
        PseudoTerminal device = rig.plugIn("a")) {
      rig.open("a", StationRig.settled(), MARKED);
      rig.startJob("a");
      try (Hand hand = new Hand(rig, "a", device)) {
        hand.touch(5);
        Await.until(() -> rig.taken().size() == 1);
        clock.step(Duration.ofHours(-1));
        hand.touch(5);
        Await.until(() -> rig.taken().size() == 2);
      }
      Reading first = rig.taken().get(0);
      Reading second = rig.taken().get(1);
      assertEquals(ClockState.STEPPED, second.clock());
      assertTrue(second.marks().contains(Mark.CLOCK_DOUBTFUL));
      assertTrue(second.wallMicros() < first.wallMicros());
      assertEquals(List.of(1L, 2L), List.of(first.stationSequence(), second.stationSequence()));
      assertTrue(second.captured().firstSequence() > first.captured().lastSequence());
      Await.until(() -> incidents(rig, "a").contains(Incident.Kind.CLOCK_STEPPED));
    }
  }
}
