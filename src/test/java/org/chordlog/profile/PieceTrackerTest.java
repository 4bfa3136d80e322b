package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Lengths;
import org.chordlog.profile.Refused.Reason;
import org.junit.jupiter.api.Test;

final class PieceTrackerTest {
  private static final double FEED = 100;

  private static Streams piece() {
    return Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 1800));
  }

  private static Reason fault(PieceRun run) {
    return Objects.requireNonNull(run.fault()).reason();
  }

  private static double mean(PieceRun run) {
    return Streams.measured(Streams.evaluated(run)).mean().bendPerMm();
  }

  private static List<ProfileEvent.Kind> events(PieceRun run) {
    return run.profile().facts().events().stream().map(ProfileEvent::kind).toList();
  }

  @Test
  void aPieceThatRunsThroughIsOne() {
    PieceRun run = piece().go(2300, FEED).only();
    assertNull(run.fault());
    assertEquals(1987, run.part().toMm(), 4);
    assertEquals(5, run.profile().facts().widthMm());
    assertEquals(2, run.profile().facts().pitchMm(), 0.01);
    assertEquals(100, run.profile().facts().feedMmPerSecond(), 0.5);
    assertEquals(1 / 1800.0, mean(run), 3e-8);
  }

  @Test
  void standstillLeavesNothingBehindAndIsNoted() {
    PieceRun plain = piece().go(2300, FEED).only();
    PieceRun stopped = piece().go(900, FEED).rest(12).go(2300, FEED).only();
    assertEquals(List.of(ProfileEvent.Kind.STOPPED), events(stopped));
    assertEquals(12_000, (double) stopped.profile().facts().events().get(0).amount(), 60);
    assertEquals(mean(plain), mean(stopped), 3e-9);
    assertEquals(100, stopped.profile().facts().feedMmPerSecond(), 0.5);
  }

  @Test
  void ofAJogTheLastTraverseCounts() {
    Streams stream = piece().go(1200, FEED);
    stream.depths(place -> 6).go(1000, FEED);
    stream.piece(2000, Streams.bent(2000, 250, 60, 1800)).go(2300, FEED);
    PieceRun run = stream.only();
    assertEquals(List.of(ProfileEvent.Kind.JOGGED), events(run));
    assertEquals(200e6, (double) run.profile().facts().events().get(0).amount(), 5e6);
    for (int i = 0; i < run.profile().bins(); i++) {
      boolean inside = run.profile().placeMm(i) > 400 && run.profile().placeMm(i) < 1600;
      boolean turn = Math.abs(run.profile().placeMm(i) - 994) < 10;
      if (inside && !turn) {
        assertEquals(2.78, run.profile().depthNm(i) / 1e6, 0.002, "bin " + i);
      }
    }
    assertEquals(List.of(), run.passes());
  }

  @Test
  void aPassBeforeTheLastHasAProfileOfItsOwn() {
    Streams stream = Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 3000));
    stream.go(1900, FEED).go(100, FEED);
    stream.piece(2000, Streams.bent(2000, 250, 60, 1800)).go(2300, FEED);
    PieceRun run = stream.only();
    assertEquals(2, run.passes().size());
    PieceOutcome first =
        new PieceEvaluation(Streams.usualSettings()).of(run.passes().get(0), Part.whole(1990));
    assertEquals(1 / 3000.0, Streams.measured(first).mean().bendPerMm(), 3e-8);
    assertEquals(1 / 1800.0, mean(run), 3e-8);
  }

  @Test
  void whatTheLastPassDidNotReachIsMarked() {
    Streams stream = Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 3000));
    stream.go(1900, FEED).go(700, FEED);
    stream.piece(2000, Streams.bent(2000, 250, 60, 1800)).go(2300, FEED);
    List<PieceMark> marks = Streams.measured(Streams.evaluated(stream.only())).marks();
    assertTrue(
        marks.stream().anyMatch(mark -> mark.kind() == PieceMark.Kind.EARLIER_PASS),
        marks.toString());
  }

  @Test
  void aBounceDoesNotEndAPieceAndItsBinsStayEmpty() {
    Streams stream = piece().go(1000, FEED);
    stream.depths(place -> Streams.FREE_MM).go(1015, FEED);
    stream.piece(2000, Streams.bent(2000, 250, 60, 1800)).go(2300, FEED);
    PieceRun run = stream.only();
    int empty = 0;
    for (int i = 0; i < run.profile().bins(); i++) {
      empty += run.profile().count(i) == 0 ? 1 : 0;
    }
    assertTrue(empty >= 2, "empty bins " + empty);
    assertEquals(1 / 1800.0, mean(run), 3e-8);
  }

  @Test
  void aPlungerAwayForLongerEndsIt() {
    Streams stream = piece().go(1000, FEED);
    stream.depths(place -> Streams.FREE_MM).go(1030, FEED);
    stream.piece(2000, Streams.bent(2000, 250, 60, 1800)).go(2300, FEED);
    assertEquals(2, stream.runs.size());
  }

  @Test
  void aTouchOfTwoValuesIsNone() {
    Streams stream = Streams.usual().depths(place -> Streams.FREE_MM).go(0, FEED);
    stream.depths(place -> 2).go(3, FEED);
    stream.depths(place -> Streams.FREE_MM).go(200, FEED);
    assertEquals(List.of(), stream.runs);
  }

  @Test
  void aDeadLengthIsSeenByTheDepth() {
    Streams stream = piece().go(1000, FEED);
    stream.depths(place -> 2.78).rest(2);
    stream.depths(place -> 0.3).rest(1);
    stream.depths(place -> Streams.FREE_MM).rest(1);
    PieceRun run = stream.only();
    assertEquals(Reason.LENGTH_DEAD, fault(run));
    assertTrue(
        Objects.requireNonNull(run.fault()).detail().toString().contains("2.48 mm"),
        run.toString());
  }

  @Test
  void aReversedLengthIsRefusedUnlessBothWaysAreAllowed() {
    Streams stream = piece();
    stream.lengthSign = -1;
    stream.go(2300, FEED);
    assertEquals(Reason.LENGTH_REVERSED, fault(stream.only()));
    TrackSettings either =
        new TrackSettings(
            new TrackSettings.Feed(LengthSource.CHANNEL, true, 400),
            new TrackSettings.Gauge(false, null, 1000, 12_500_000, Streams.SPAN),
            KnownLengths.NONE);
    Streams both = new Streams(either).piece(2000, Streams.bent(2000, 250, 60, 1800));
    both.lengthSign = -1;
    assertEquals(1 / 1800.0, mean(both.go(2300, FEED).only()), 3e-8);
  }

  @Test
  void aLengthThatJumpsEndsThePieceAndNothingIsInventedAcross() {
    Streams stream = piece().go(1000, FEED);
    stream.lengthOffsetMm = 500;
    stream.go(2300, FEED);
    assertEquals(1, stream.runs.size());
    assertEquals(Reason.LENGTH_JUMPED, fault(stream.only()));
    assertTrue(
        Objects.requireNonNull(stream.only().fault()).detail().toString().contains("502 mm"),
        stream.runs.toString());
    assertTrue(stream.tracker.armed(), "armed again in free air");
  }

  @Test
  void aCounterResetBetweenPiecesHarmsNothing() {
    Streams stream = piece().go(2300, FEED);
    stream.placeMm = -100;
    stream.lengthOffsetMm = -4000;
    stream.go(2300, FEED);
    assertEquals(2, stream.runs.size());
    assertNull(stream.runs.get(1).fault());
  }

  @Test
  void aGapForbidsTheReadingAndTheRestOfThePieceIsNotTaken() {
    Streams stream = piece().go(1000, FEED);
    stream.tracker.gap(stream.runs::add);
    assertEquals(Reason.GAP, fault(stream.only()));
    stream.go(2300, FEED);
    assertEquals(1, stream.runs.size());
  }

  @Test
  void aHoleInTheStreamIsNoted() {
    Streams stream = piece().go(800, FEED).skip(120, FEED).go(2300, FEED);
    assertEquals(List.of(ProfileEvent.Kind.NO_VALUES), events(stream.only()));
    List<PieceMark> marks = Streams.measured(Streams.evaluated(stream.only())).marks();
    assertEquals("no values along 122 mm at 792 mm", marks.get(0).words().toString());
    String inch = marks.get(0).words().in(Lengths.INCH);
    assertTrue(inch.matches("no values along 4\\.8\\d in at 31\\.1\\d in"), inch);
  }

  @Test
  void aServiceThatStartsInTheMiddleOfAPieceLeavesItOut() {
    Streams stream = piece();
    stream.placeMm = 800;
    stream.go(2300, FEED);
    assertEquals(List.of(), stream.runs);
    stream.placeMm = -100;
    stream.lengthOffsetMm = 2400;
    assertNull(stream.go(2300, FEED).only().fault());
  }

  @Test
  void freeAirThatProvesTooHighRefusesThePiece() {
    Streams stream = Streams.usual().depths(place -> -2.0).rest(1);
    stream.depths(place -> 1.0).go(500, FEED);
    stream.depths(place -> Streams.FREE_MM).go(800, FEED);
    assertEquals(Reason.FREE_AIR_UNKNOWN, fault(stream.only()));
    assertEquals(-5_000_000, Objects.requireNonNull(stream.tracker.freeAirNm()), 1000);
  }

  @Test
  void whatRunsNowIsShown() {
    Streams stream = piece().go(900, FEED);
    LivePiece live = Objects.requireNonNull(stream.tracker.live(Math.round(stream.seconds * 1e9)));
    assertEquals(894, live.placeMm(), 4);
    assertFalse(live.stopped());
    assertTrue(live.soFar().bins() > 170);
    stream.rest(6);
    live = Objects.requireNonNull(stream.tracker.live(Math.round(stream.seconds * 1e9)));
    assertTrue(live.stopped());
    stream.go(2300, FEED);
    assertNull(stream.tracker.live(0));
  }
}
