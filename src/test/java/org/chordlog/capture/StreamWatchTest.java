package org.chordlog.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.chordlog.measure.Lengths;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys of the indicator pressed in the middle of a shift, and shifts in which none is. */
@Tag("slow")
final class StreamWatchTest {
  private static final int PLAYS = 25;
  private static final long SEED = 11;

  static Stream<WatchTable.Fault> faults() {
    return WatchTable.faults().stream();
  }

  /** Each in 25 of 25 plays, by its right name, at slow, usual and fast rates. */
  @ParameterizedTest
  @MethodSource("faults")
  void aPressedKeyIsTold(WatchTable.Fault fault) {
    for (double rate : new double[] {4, 10, 20, 100}) {
      WatchTable.Row row = WatchTable.row(fault, rate, PLAYS, SEED);
      assertEquals(PLAYS, row.told(), row.toString());
      assertEquals(PLAYS, row.named(), row.toString());
      assertTrue(row.latest() <= 5, row.toString());
    }
  }

  @Test
  void nothingIsToldInFiveHundredQuietShifts() {
    assertEquals(Map.of(), WatchTable.quiet(5, 500, SEED));
  }

  /** Then each piece looks as free air would if the indicator counted the other way. */
  @Test
  void norWhereABendIsAsDeepAsFreeAirIsHigh() {
    assertEquals(Map.of(), WatchTable.quiet(-Play.AIR_MM, 300, SEED));
  }

  /** Also where pieces are less deep than free air is high: nothing lies beyond the stop then. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 5})
  void aReversedSignIsToldFromTheSecondPieceOn(double pieceMm) {
    for (double rate : new double[] {4, 10, 20, 100}) {
      for (int before : new int[] {2, 3, 6}) {
        Play play = pieces(new Play(rate, 0.001, SEED).hold(1.5), pieceMm, before);
        play.shown = mm -> -mm;
        play.hold(0.6);
        long firstContact = Math.round(play.seconds() * 1e9);
        StreamDoubt doubt = told(pieces(play, pieceMm, 4)).get(0);
        String where = rate + " values a second, after " + before;
        assertEquals(StreamDoubt.Kind.DIRECTION, doubt.kind(), where);
        assertTrue(doubt.sinceNanos() <= firstContact, where);
      }
    }
  }

  private static Play pieces(Play play, double mm, int count) {
    for (int i = 0; i < count; i++) {
      play.touch(mm + 0.05 * (2 * play.random().nextDouble() - 1), 1.2);
    }
    return play;
  }

  private static Play shift(int pieces) {
    Play play = new Play(20, 0.001, SEED).hold(1.5);
    for (int i = 0; i < pieces; i++) {
      play.touch(5, 1.2);
    }
    return play;
  }

  private static List<StreamDoubt> told(Play play) {
    List<StreamDoubt> doubts = new ArrayList<>();
    StreamWatch watch = new StreamWatch(WatchTable.settings());
    play.samples().forEach(sample -> watch.offer(sample, doubts::add));
    return doubts;
  }

  /**
   * Of an indicator whose last digit had moved in free air before; one that never does may rest.
   */
  @Test
  void aValueThatNoLongerChangesInFreeAirIsToldAfterTwoMinutes() {
    List<StreamDoubt> doubts = told(shift(6).noise(0).hold(115));
    assertEquals(List.of(), doubts);
    Play frozen = shift(6);
    double since = frozen.seconds();
    doubts = told(frozen.noise(0).hold(130));
    assertEquals(1, doubts.size(), doubts.toString());
    assertEquals(StreamDoubt.Kind.FROZEN, doubts.get(0).kind());
    assertEquals(since, doubts.get(0).sinceNanos() / 1e9, 1);
    Play still = new Play(20, 0.001, SEED).noise(0).hold(1.5);
    for (int i = 0; i < 6; i++) {
      still.touch(5, 1.2);
    }
    assertEquals(List.of(), told(still.hold(130)));
  }

  /** Inside, values grow as the plunger is pushed in, whichever way the indicator counts. */
  @Test
  void whatIsSaidHasTheSignThatTheIndicatorShows() {
    StreamDoubt doubt = new StreamDoubt(StreamDoubt.Kind.ZERO_MOVED, 2, 1, -3_000_000, -3_120_000);
    String up = doubt.shownBy(Direction.COUNTS_UP).sentence().in(Lengths.MM);
    String down = doubt.shownBy(Direction.COUNTS_DOWN).sentence().in(Lengths.MM);
    assertTrue(up.contains("\u22123.120 mm instead of \u22123.000 mm"), up);
    assertTrue(down.contains("+3.120 mm instead of +3.000 mm"), down);
  }

  @Test
  void aMovedZeroSaysSinceWhenReadingsAreInDoubtAndByHowMuch() {
    Play play = shift(6);
    double lifted = play.seconds();
    play.move(5, 0.4).land(t -> 5, 1);
    play.shown = mm -> mm - 0.12;
    play.hold(0.5).leave(0.3);
    StreamDoubt doubt = told(play).get(0);
    assertEquals(StreamDoubt.Kind.ZERO_MOVED, doubt.kind());
    assertEquals(lifted, doubt.sinceNanos() / 1e9, 0.1);
    assertEquals(-120_000.0, (double) (doubt.toNm() - doubt.fromNm()), 2_000);
    assertTrue(
        doubt.sentence().toString().contains("−3.120 mm instead of −3.000 mm"),
        doubt.sentence().toString());
  }

  @Test
  void aSettingThatIsSetBackIsToldToo() {
    Play play = shift(6);
    play.shown = mm -> -mm;
    play.hold(1).touch(5, 1.2).touch(5, 1.2);
    play.shown = mm -> mm;
    play.hold(1).touch(5, 1.2);
    assertEquals(
        List.of(StreamDoubt.Kind.DIRECTION, StreamDoubt.Kind.RESTORED),
        told(play).stream().map(StreamDoubt::kind).toList());
  }

  @Test
  void freeAirThatIsFrozenIsToldWhereNoiseShowed() {
    Play play = shift(6);
    play.noise(0).shown = mm -> Play.AIR_MM;
    play.hold(130);
    assertEquals(
        List.of(StreamDoubt.Kind.FROZEN), told(play).stream().map(StreamDoubt::kind).toList());
    Play coarse = new Play(20, 0.01, SEED).noise(0).hold(1.5);
    for (int i = 0; i < 6; i++) {
      coarse.touch(5, 1.2);
    }
    assertEquals(List.of(), told(coarse.hold(130)));
  }
}
