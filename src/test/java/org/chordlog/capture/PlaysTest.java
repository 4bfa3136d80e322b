package org.chordlog.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Withdrawn;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Played pieces: rocked and set down, with stray values, vibration and short rests. */
@Tag("slow")
final class PlaysTest {
  private static final int PIECES = 200;
  private static final long SEED = 7;

  static Stream<RockedTable.Scene> rockedScenes() {
    return RockedTable.scenes().stream();
  }

  /** Bias below one step, worst below five, at least 95 of 100 read. */
  @ParameterizedTest
  @MethodSource("rockedScenes")
  void rockedExtremesAreRobust(RockedTable.Scene scene) {
    RockedTable.Row row = RockedTable.row(scene, PIECES, SEED);
    double step = RockedTable.STEP_MM * 1000;
    assertTrue(row.read() >= 0.95 * PIECES, row.toString());
    assertTrue(Math.abs(row.meanUm()) < step, row.toString());
    assertTrue(row.worstUm() < 5 * step, row.toString());
  }

  /** Ten values a second catch the ringing of a landing at four places only. */
  @ParameterizedTest
  @EnumSource
  void aLandingDoesNotWinOverTheTurns(Extreme extreme) {
    RockedTable.Row row =
        RockedTable.row(new RockedTable.Scene(extreme, 10, 0.5, 0.3, 0, 0), PIECES, SEED);
    assertTrue(row.read() >= 0.95 * PIECES, row.toString());
    assertTrue(row.worstUm() < 5, row.toString());
  }

  private static SettledTable.Row settled(double rateHz, double restSeconds, double vibrationMm) {
    return SettledTable.row(
        new SettledTable.Scene("", rateHz, 0.001, restSeconds, vibrationMm, 0), PIECES, SEED);
  }

  @Test
  void quietPiecesAreReadWithoutBias() {
    for (double rate : new double[] {10, 20, 100}) {
      SettledTable.Row row = settled(rate, 1.2, 0);
      assertEquals(PIECES, row.read(), row.toString());
      assertTrue(row.others().isEmpty() && row.worstUm() < 1.5, row.toString());
    }
  }

  /** Invented: R 1000 on a bridge of 200 mm, where 1 mm of radius is 5 µm of depth. */
  @Test
  void aWideToleranceReadsThroughVibrationAndATightOneSaysWhyNot() {
    Indicator fine = ToleranceTable.indicator(0.001);
    for (double rate : new double[] {10, 20, 100}) {
      SettledTable.Row wide = ToleranceTable.row(rate, fine, 50, PIECES);
      assertTrue(wide.read() >= 0.95 * PIECES, wide.toString());
      assertTrue(wide.scatterUm() > 8, wide.toString());
      SettledTable.Row tight = ToleranceTable.row(rate, fine, 1, PIECES);
      assertTrue(tight.read() < 0.1 * PIECES, tight.toString());
      assertTrue(tight.others().getOrDefault("VIBRATES", 0) > 0.6 * PIECES, tight.toString());
      assertFalse(tight.others().containsKey("MOVED"), tight.toString());
    }
  }

  @Test
  void whatAToleranceIsWorthIsHalfTheRangeOfDepthsOverTen() {
    // h = 5.2777 and 4.7733 mm for R 950 and 1050 over 200 mm: h = R - sqrt(R^2 - 100^2)
    double widthMm =
        (950 - Math.sqrt(950.0 * 950 - 10_000)) - (1050 - Math.sqrt(1050.0 * 1050 - 10_000));
    assertEquals(
        widthMm / 20 * 1e6,
        (double) ToleranceTable.meanMayErrNm(ToleranceTable.indicator(0.001), 50),
        1);
  }

  @Test
  void vibrationOfTenMicronsIsReadWithItsScatter() {
    SettledTable.Row row = settled(100, 1.5, 0.010);
    assertTrue(row.read() >= 0.99 * PIECES, row.toString());
    assertTrue(Math.abs(row.meanUm()) < 1 && row.worstUm() < 10, row.toString());
    assertEquals(10, row.scatterUm(), 2);
  }

  @Test
  void moreVibrationSaysSo() {
    SettledTable.Row row = settled(100, 1.5, 0.030);
    assertEquals(0, row.read());
    assertTrue(row.others().getOrDefault("VIBRATES", 0) > 0, row.toString());
  }

  @Test
  void restsThatAreTooShortAreNamedSo() {
    for (SettledTable.Row row :
        new SettledTable.Row[] {settled(50, 0.3, 0), settled(10, 0.3, 0), settled(1, 1.5, 0)}) {
      assertEquals(0, row.read(), row.toString());
      assertEquals(PIECES, row.others().get("TOO_SHORT"), row.toString());
    }
  }

  /** The plunger leaves before the rest was as long as is waited for: it is taken then. */
  @Test
  void aRestOfSevenTenthsIsTakenWhenThePlungerLeaves() {
    for (double rate : new double[] {20, 50, 100}) {
      SettledTable.Row row = settled(rate, 0.7, 0);
      assertTrue(row.read() >= 0.95 * PIECES && row.worstUm() < 3, row.toString());
      assertTrue(Math.abs(row.meanUm()) < 0.5, row.toString());
    }
  }

  @Test
  void fourSecondsAreEnoughForAnIndicatorThatSendsOnceASecond() {
    SettledTable.Row row = settled(1, 4, 0);
    assertTrue(row.read() >= 0.95 * PIECES && row.worstUm() < 3, row.toString());
  }

  /** The first rest is taken; the later, longer one is the truth. */
  @Test
  void whatWasSetDownBadlyOrPressedLaterIsOfferedInItsPlace() {
    for (HandsTable.Scene scene : HandsTable.scenes().subList(0, 2)) {
      HandsTable.Row row = HandsTable.row(scene, 20, PIECES, SEED);
      assertEquals(PIECES, row.right() + row.rightOffered(), row.toString());
      assertEquals(row.wrong(), row.rightOffered(), row.toString());
    }
  }

  /** The first is taken and stays; those of another depth are offered, so that none is silent. */
  @Test
  void piecesThatAreSlidToAreOffered() {
    for (double rate : new double[] {10, 20, 100}) {
      int apart = 0;
      int offered = 0;
      for (int shift = 0; shift < 20; shift++) {
        HandsTable.Row row = HandsTable.row(HandsTable.scenes().get(2), rate, 25, SEED + shift);
        assertEquals(1, row.right() + row.wrong(), row.toString());
        assertEquals(Map.of(), row.others(), row.toString());
        apart += row.apart();
        offered += Math.min(row.rightOffered(), row.apart());
      }
      assertTrue(apart > 250, rate + " values/s: " + apart);
      assertTrue(offered >= 0.98 * apart, rate + " values/s: " + offered + " of " + apart);
    }
  }

  /** Waves of 20 to 100 µm and 2 to 40 s: a crest that looked like a rest does not stay taken. */
  @Test
  void whatRunsPastInWavesDoesNotStayTaken() {
    Random random = new Random(SEED);
    for (int i = 0; i < PIECES; i++) {
      double amplitudeMm = 0.02 + 0.08 * random.nextDouble();
      double seconds = 2 + 38 * random.nextDouble();
      double phase = 2 * Math.PI * random.nextDouble();
      Play play = new Play(20, 0.001, SEED + i).hold(2).move(5, 0.4);
      double whole = play.seconds() + 120;
      play.follow(t -> 5 + amplitudeMm * Math.sin(2 * Math.PI * t / seconds + phase), 160);
      long early =
          settledOutcomes(play).stream()
              .filter(o -> o instanceof Captured c && c.depth().monotonicNanos() < whole * 1e9)
              .count();
      long withdrawn = settledOutcomes(play).stream().filter(Withdrawn.class::isInstance).count();
      assertTrue(early <= withdrawn, amplitudeMm + " mm, " + seconds + " s");
    }
  }

  private static List<CaptureOutcome> settledOutcomes(Play play) {
    Indicator indicator = new Indicator(0.001, 0.003, 12.7);
    return play.through(Captures.of(CaptureOptions.of(CaptureMode.SETTLED).settings(indicator)));
  }

  /** -0.5 (p - 3)² + 40 has its highest point, 40, at 3. */
  @Test
  void aParabolaLeavesStrayValuesOut() {
    double[] places = new double[11];
    double[] values = new double[11];
    Random random = new Random(5);
    for (int i = 0; i < 11; i++) {
      places[i] = i;
      values[i] = 40 - 0.5 * (i - 3) * (i - 3) + 0.01 * random.nextGaussian();
    }
    values[8] += 30;
    Parabola fit = Parabola.robust(places, values, 0.01);
    assertEquals(10, fit.count());
    assertTrue(fit.peaks());
    assertEquals(40, fit.peak(), 0.05);
    assertTrue(fit.scatter() < 0.05);
  }

  @Test
  void tooFewSamplesAreNoExtreme() {
    CaptureSettings settings =
        CaptureOptions.of(CaptureMode.EXTREMUM).settings(new Indicator(0.001, 0.003, 12.7));
    Rocking rocking = new Rocking(settings);
    assertNull(rocking.extremum());
    Play play = new Play(50, 0.001, 1).hold(0.06);
    play.samples().forEach(s -> rocking.trace().add(s, 0));
    assertNull(rocking.extremum());
    Rocking still = new Rocking(settings);
    new Play(50, 0.001, 1).hold(2).samples().forEach(s -> still.trace().add(s, 8_000_000));
    assertNotNull(still.extremum());
  }
}
