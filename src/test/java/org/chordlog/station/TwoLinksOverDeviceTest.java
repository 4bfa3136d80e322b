package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.Patience;
import org.chordlog.WaitingTest;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Incident;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.StoredPiece;
import org.chordlog.profile.TrackSettings;
import org.chordlog.radius.RadiusModel;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationStatus.DelayNow;
import org.chordlog.station.StationStatus.DelayOrigin;
import org.chordlog.station.StationStatus.LengthNow;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Depths and lengths of a running section on two real devices. */
@Tag("slow")
final class TwoLinksOverDeviceTest {
  private static final double DELAY_MS = 80;

  /** Two threads of a busy machine read and time what was sent. */
  private static final double LATE_MS = 8;

  /** Of which a busy machine reads one at least in time. */
  private static final int MOST_PIECES = 6;

  @TempDir private Path directory;
  private final Heard heard = new Heard();

  private Stations serve(Store store, String delay) {
    Stations stations = new Stations(store, StationClock.system(), 1);
    stations.subscribe(heard::add);
    String feed = TwoLinkRig.feed(directory.resolve("encoder"), delay);
    StationFile.parse(LineRig.yaml(directory.resolve("port"), feed), "test").forEach(stations::add);
    return stations;
  }

  private static LengthNow length(Stations stations) {
    return Objects.requireNonNull(stations.status(LineRig.STATION).length());
  }

  private static void awaitBothOpen(Stations stations) throws Exception {
    Await.until(() -> stations.status(LineRig.STATION).link() == LinkState.OPEN);
    Await.until(() -> length(stations).link() == LinkState.OPEN);
  }

  private static double left(TwoLinkRig rig, int piece) {
    return rig.stream.truths().get(piece).leftSeconds() + 1.2;
  }

  private PseudoTerminal terminal(String name) throws Exception {
    PseudoTerminal terminal = PseudoTerminal.open();
    terminal.publish(directory.resolve(name));
    return terminal;
  }

  /** The delay is found by a run forth and back; then a profile is that of lengths in the frame. */
  @WaitingTest
  void aDelayIsFoundAndProfilesAreThoseOfLengthsInTheSameFrame() throws Exception {
    try (PseudoTerminal depths = terminal("port");
        PseudoTerminal counts = terminal("encoder");
        Store store = Stores.open(directory.resolve("data"))) {
      var job = LineRig.startJob(store, DecideBy.MEAN);
      LineScenario forthAndBack = TwoLinkRig.scenario(directory, "[1, 1]");
      TwoLinkRig rig = new TwoLinkRig(depths, counts, forthAndBack, DELAY_MS);
      try (Stations stations = serve(store, "")) {
        awaitBothOpen(stations);
        assertEquals(DelayOrigin.NOT_KNOWN, length(stations).delay().origin());
        stations.at(LineRig.STATION).findDelay();
        assertTrue(length(stations).delay().searching());
        forthAndBackUntilFound(rig, stations);
        DelayNow found = length(stations).delay();
        double u = Objects.requireNonNull(found.uncertaintyMs(), found::said);
        assertEquals(DelayOrigin.FOUND, found.origin(), found::said);
        assertEquals(DELAY_MS, found.ms(), 3 * u + lateMs(), found::said);
        checkNextProfile(store, rig, Math.abs(found.ms() - DELAY_MS) + lateMs());
      }
      assertEquals(heard.taken(), store.readings().ofJob(job.id(), 0, 10));
    }
  }

  /**
   * Where the machine was so busy that the stream broke off, or came so late in part that no delay
   * of it is believed, the next piece has to do.
   */
  private static void forthAndBackUntilFound(TwoLinkRig rig, Stations stations) throws Exception {
    for (int piece = 0; length(stations).delay().searching(); piece++) {
      assertTrue(piece < MOST_PIECES, length(stations).delay()::said);
      rig.runUntil(left(rig, piece));
      Await.until(
          () -> !length(stations).delay().searching() || brokeOff(stations),
          () -> length(stations).delay());
      if (length(stations).delay().said().endsWith("allowed: 200 ms")) {
        stations.at(LineRig.STATION).findDelay();
      }
    }
  }

  private static boolean brokeOff(Stations stations) {
    return length(stations).delay().said().startsWith("The stream broke off");
  }

  /** Of a piece that no stall of a busy machine had refused or moved along its length. */
  private void checkNextProfile(Store store, TwoLinkRig rig, double offMs) throws Exception {
    for (int left = MOST_PIECES - 1; left >= 0; left--) {
      rig.next(TwoLinkRig.scenario(directory, "[1]"), 8);
      int before = heard.taken().size();
      try {
        outcome(rig, 0);
        assertEquals(before + 1, heard.taken().size(), heard.refused()::toString);
        checkProfile(store, heard.taken().get(before), rig, offMs);
        return;
      } catch (AssertionError e) {
        if (left == 0) {
          throw e;
        }
      }
    }
  }

  /** That piece of the stream has passed, and is measured or refused. */
  private void outcome(TwoLinkRig rig, int piece) throws Exception {
    int before = outcomes();
    rig.runUntil(left(rig, piece));
    Await.until(() -> outcomes() > before);
  }

  private int outcomes() {
    return heard.taken().size() + heard.refused().size();
  }

  /** A busy machine reads later what came in time. */
  private static double lateMs() {
    return LATE_MS * Patience.load();
  }

  private static void checkProfile(Store store, Reading reading, TwoLinkRig rig, double offMs) {
    List<PassedProfile> profiles = store.readings().profiles(reading.id());
    assertEquals(LengthSource.LINK, profiles.get(0).basis().source());
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    var job = store.jobs().find(reading.jobId()).orElseThrow();
    PieceOutcome stored = StoredPiece.evaluated(profiles, model, job.specification()).outcome();
    PieceResult own = ((PieceOutcome.Measured) stored).result();
    PieceResult frame = inTheSameFrame(rig, model);
    double placeMm = TwoLinkRig.FEED_MM_PER_SECOND * offMs / 1e3 + 5;
    assertEquals(frame.zone().fromMm(), own.zone().fromMm(), placeMm);
    assertEquals(frame.zone().toMm(), own.zone().toMm(), placeMm);
    double mean = frame.mean().bendPerMm();
    assertEquals(1, own.mean().bendPerMm() / mean, 5e-4, "a ripple begins and ends elsewhere");
    assertEquals(frame.mean().windows(), own.mean().windows(), 1);
  }

  /** What the same values give where each has its length beside it. */
  private static PieceResult inTheSameFrame(TwoLinkRig rig, RadiusModel model) {
    KnownLengths nothing = new KnownLengths(null, null, null, null, null);
    PieceTracker tracker =
        new PieceTracker(
            new TrackSettings(
                new TrackSettings.Feed(LengthSource.CHANNEL, false, 400),
                new TrackSettings.Gauge(false, null, 1_000, 12_500_000, 200),
                nothing));
    List<PieceRun> runs = new ArrayList<>();
    long sequence = 0;
    for (TwoLinkRig.Sent each : rig.sent) {
      long nanos = Math.round(each.seconds() * 1e9);
      tracker.offer(++sequence, nanos, each.lengthNm(), each.depthNm(), runs::add);
    }
    EvaluationSettings settings =
        new EvaluationSettings(
            model, LengthSource.CHANNEL, Face.OUTER, nothing, null, DecideBy.MEAN);
    PieceOutcome outcome = new PieceEvaluation(settings).of(runs.get(0));
    return ((PieceOutcome.Measured) outcome).result();
  }

  /** A piece that loses its length is refused, the next one too; both are measured no longer. */
  @WaitingTest
  void anEncoderThatIsGoneIsSaidAndNothingIsInventedAcrossTheGap() throws Exception {
    try (PseudoTerminal depths = terminal("port");
        Store store = Stores.open(directory.resolve("data"))) {
      var job = LineRig.startJob(store, DecideBy.MEAN);
      PseudoTerminal counts = terminal("encoder");
      LineScenario scenario = TwoLinkRig.scenario(directory, "[1]");
      TwoLinkRig rig = new TwoLinkRig(depths, counts, scenario, 0);
      try (Stations stations = serve(store, ", delayMs: 0")) {
        awaitBothOpen(stations);
        assertEquals(DelayOrigin.STATED, length(stations).delay().origin());
        rig.runUntil(rig.stream.truths().get(0).beganSeconds() + 3);
        counts.close();
        Await.until(() -> !length(stations).known());
        assertTrue(length(stations).words().contains("no length along the feed"));
        rig.runUntil(left(rig, 0));
        Await.until(() -> heard.refused().size() == 1);
        rig.runUntil(left(rig, 1));
        Await.until(() -> heard.refused().size() == 2, () -> heard.refused().toString());
        assertEquals(List.of(Reason.NO_LENGTH, Reason.NO_LENGTH), heard.refused());
        assertEquals(List.of(), heard.taken());
        try (PseudoTerminal again = terminal("encoder")) {
          rig.counts(again);
          Await.until(() -> length(stations).link() == LinkState.OPEN);
          for (int piece = 2; heard.taken().isEmpty(); piece++) {
            assertTrue(piece < 2 + MOST_PIECES, heard.refused()::toString);
            outcome(rig, piece);
          }
          assertTrue(length(stations).known());
          assertEquals("", length(stations).words());
        }
      }
      assertEquals(1, store.readings().ofJob(job.id(), 0, 10).size());
      List<Incident> gaps =
          store.incidents().ofStation(LineRig.STATION, Long.MAX_VALUE, 10).stream()
              .filter(each -> each.kind() == Incident.Kind.LINK_LOST)
              .filter(each -> each.detail().startsWith("Length: "))
              .filter(each -> each.toMicros() - each.fromMicros() > 5_000_000)
              .toList();
      assertEquals(1, gaps.size(), gaps::toString);
      assertTrue(gaps.get(0).detail().contains("encoder"), gaps::toString);
    }
  }

  /** An encoder that sends nothing while its port stays open. */
  @WaitingTest
  void anEncoderThatIsSilentGivesNoLength() throws Exception {
    try (PseudoTerminal depths = terminal("port");
        PseudoTerminal counts = terminal("encoder");
        PseudoTerminal nowhere = PseudoTerminal.open();
        Store store = Stores.open(directory.resolve("data"))) {
      var unused = LineRig.startJob(store, DecideBy.MEAN);
      LineScenario scenario = TwoLinkRig.scenario(directory, "[1]");
      TwoLinkRig rig = new TwoLinkRig(depths, counts, scenario, 0);
      try (Stations stations = serve(store, "")) {
        awaitBothOpen(stations);
        assertNull(length(stations).delay().uncertaintyMs());
        rig.runUntil(rig.stream.truths().get(0).beganSeconds() + 3);
        rig.counts(nowhere);
        rig.runUntil(left(rig, 0));
        Await.until(() -> heard.refused().size() == 1, () -> heard.taken().toString());
        assertEquals(List.of(Reason.NO_LENGTH), heard.refused());
        assertEquals(LinkState.OPEN, length(stations).link());
        assertTrue(length(stations).words().contains("sends no counts"), length(stations)::words);
        assertTrue(Files.exists(directory.resolve("encoder")));
      }
    }
  }
}
