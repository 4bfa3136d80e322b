package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Roller;
import org.chordlog.profile.RollerVerdict.Finding;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RollerTest {
  private static final Roller ENTRY = new Roller("entry", 180, 0, Face.OUTER, false);
  private static final Roller INNER = new Roller("inner", 150, 0, Face.INNER, true);
  private static final Roller EXIT = new Roller("exit", 220, 0, Face.OUTER, false);

  /**
   * πD on the roller's own face, on another in the ratio of the radii: a tube of 60.3 mm bent to
   * 1,800 and 600 mm at its centreline. Elementary.
   */
  @ParameterizedTest
  @CsvSource({
    "OUTER, 1830.15, OUTER, 565.486678",
    "INNER, 1830.15, OUTER, 584.753196",
    "INNER, 630.15, OUTER, 625.324963",
    "OUTER, 1830.15, CENTRELINE, 556.170816",
    "OUTER, 630.15, CENTRELINE, 538.430543",
    "INNER, 1830.15, CENTRELINE, 575.119937"
  })
  void wavelengthAlongTheFace(Face side, double radius, Face along, double expected) {
    Roller roller = new Roller("r", 180, 0, side, false);
    RollerSight sight =
        RollerSight.of(List.of(roller), Streams.setUp(Face.OUTER), along, radius, 0).get(0);
    assertEquals(expected, sight.wavelengthMm(), 1e-6);
  }

  @Test
  void whatCantBeSeenIsSaidBeforehand() {
    Roller small = new Roller("small", 40, 0, Face.OUTER, false);
    List<RollerSight> sights =
        RollerSight.of(List.of(small, ENTRY), Streams.setUp(Face.OUTER), Face.OUTER, 1800, 80);
    assertEquals(
        "a span of 200 mm shows only 5.7 % of a ripple of 126 mm",
        String.valueOf(sights.get(0).unseen()));
    assertTrue(
        String.valueOf(sights.get(1).unseen()).startsWith("values come only every 80 mm"),
        String.valueOf(sights.get(1).unseen()));
    assertNull(
        RollerSight.of(List.of(ENTRY), Streams.setUp(Face.OUTER), Face.OUTER, 1800, 20)
            .get(0)
            .unseen());
  }

  @Test
  void aRollerOnNoFaceIsRefused() {
    Assertions.assertThrows(BadInput.class, () -> new Roller("r", 180, 0, Face.CENTRELINE, false));
  }

  private static RippleScan scan(double length, DoubleUnaryOperator relative, Roller... rollers) {
    return scans(length, relative, rollers).once();
  }

  /** Waves once and twice a turn of a roller. */
  private record Scans(RippleScan once, RippleScan twice) {}

  private static Scans scans(double length, DoubleUnaryOperator relative, Roller... rollers) {
    DoubleUnaryOperator hoop = Streams.bent(length, 280, 80, 1800);
    Streams stream =
        Streams.usual().piece(length, s -> hoop.applyAsDouble(s) * (1 + relative.applyAsDouble(s)));
    stream.rate = 20;
    stream.rest(1);
    PieceRun run = stream.go(length + 300, 100).only();
    PieceResult result = Streams.measured(Streams.evaluated(run));
    EvaluationSettings settings = Streams.usualSettings();
    List<Roller> all = List.of(rollers);
    return new Scans(
        RippleScan.of(run.profile(), result, settings, all),
        RippleScan.ofTwoWavesATurn(run.profile(), result, settings, all));
  }

  private static DoubleUnaryOperator wave(double wavelength, double percent) {
    return s -> percent / 100 * Math.cos(2 * Math.PI * s / wavelength + 0.4);
  }

  @Test
  void theRollerThatRunsOutIsNamedWithItsAmplitude() {
    RippleScan scan = scan(6000, wave(565.49, 0.2), ENTRY, INNER, EXIT);
    RollerVerdict verdict = RollerSearch.verdict(List.of(scan));
    assertEquals(new Finding.Named(ENTRY), verdict.finding());
    RollerRipple ripple = verdict.ripples().get(0);
    assertEquals(0.2, ripple.amplitudePercent(), 0.004);
    assertEquals(565.49, ripple.wavelengthMm(), 6);
    assertTrue(ripple.probability() < 1e-4, ripple.toString());
  }

  /** An oval roller of 180 mm waves every 282.74 mm, an eccentric one every 565.49 mm. */
  @Test
  void anOvalRollerIsToldFromAnEccentricOne() {
    Scans oval = scans(6000, wave(282.74, 0.2), ENTRY, INNER, EXIT);
    RollerVerdict twice =
        RollerSearch.verdict(List.of(oval.twice()), RollerSearch.PROBABILITY_TWICE);
    assertEquals(new Finding.Named(ENTRY), twice.finding());
    assertEquals(0.2, twice.ripples().get(0).amplitudePercent(), 0.01);
    assertEquals(282.74, twice.ripples().get(0).wavelengthMm(), 3);
    assertEquals(new Finding.NoRipple(), RollerSearch.verdict(List.of(oval.once())).finding());
    Scans eccentric = scans(6000, wave(565.49, 0.2), ENTRY, INNER, EXIT);
    assertEquals(
        new Finding.NoRipple(), RollerSearch.verdict(List.of(eccentric.twice())).finding());
  }

  @Test
  void aRollerMayBeBothOvalAndEccentric() {
    DoubleUnaryOperator once = wave(565.49, 0.2);
    DoubleUnaryOperator twice = wave(282.74, 0.1);
    Scans both =
        scans(6000, s -> once.applyAsDouble(s) + twice.applyAsDouble(s), ENTRY, INNER, EXIT);
    RollerVerdict one = RollerSearch.verdict(List.of(both.once()));
    RollerVerdict two = RollerSearch.verdict(List.of(both.twice()), RollerSearch.PROBABILITY_TWICE);
    assertEquals(new Finding.Named(ENTRY), one.finding());
    assertEquals(new Finding.Named(ENTRY), two.finding());
    assertEquals(0.2, one.ripples().get(0).amplitudePercent(), 0.01);
    assertEquals(0.1, two.ripples().get(0).amplitudePercent(), 0.01);
  }

  /** Half of 180 mm is 90 mm: what the small one makes once a turn, the large one makes twice. */
  @Test
  void twoWavesATurnAreNotToldWhereAnotherRollerMakesThemOnceATurn() {
    Roller half = new Roller("half", 90, 0, Face.OUTER, false);
    Scans scans = scans(6000, wave(282.74, 0.2), ENTRY, half);
    assertEquals(new Finding.Named(half), RollerSearch.verdict(List.of(scans.once())).finding());
    assertEquals(
        "once a turn half makes the same ripple",
        String.valueOf(scans.twice().sights().get(0).unseen()));
  }

  /** A wave of something else among the neighbours, of 0.5 % every 345.6 mm. */
  @Test
  void aStrangerAmongTheNeighboursLeavesTheUncertaintyBounded() {
    for (double stranger : new double[] {330, 345.6, 360, 400, 420}) {
      RollerVerdict verdict =
          RollerSearch.verdict(List.of(scan(6000, wave(stranger, 0.5), ENTRY, INNER, EXIT)));
      for (RollerRipple ripple : verdict.ripples()) {
        assertTrue(ripple.uncertaintyPercent() < 0.5, ripple::toString);
      }
    }
  }

  @Test
  void withoutRippleNobodyIsNamed() {
    RollerVerdict verdict = RollerSearch.verdict(List.of(scan(6000, s -> 0, ENTRY, INNER, EXIT)));
    assertEquals(new Finding.NoRipple(), verdict.finding());
    assertNull(verdict.unfit());
  }

  /** Whatever the length, two rollers that are equal make the same wave. */
  @Test
  void equalRollersAreNotTold() {
    Roller twin = new Roller("twin", 180, 0, Face.OUTER, true);
    RollerVerdict verdict =
        RollerSearch.verdict(List.of(scan(6000, wave(565.49, 0.2), ENTRY, twin, EXIT)));
    Finding.OneOfTwo found = (Finding.OneOfTwo) verdict.finding();
    assertNull(found.neededMm());
  }

  @Test
  void tooShortAPieceSaysWhatIsNeeded() {
    RollerVerdict verdict =
        RollerSearch.verdict(List.of(scan(3000, wave(565.49, 0.2), ENTRY, INNER, EXIT)));
    assertEquals(new Finding.NoRipple(), verdict.finding());
    assertTrue(
        String.valueOf(verdict.unfit()).endsWith(" mm are needed to tell rollers apart"),
        String.valueOf(verdict.unfit()));
    assertEquals(3, verdict.sights().size());
  }

  @Test
  void fivePiecesTogetherAndNotBefore() {
    RollerPool pool = new RollerPool();
    RippleScan scan = scan(6000, wave(691.15, 0.1), ENTRY, INNER, EXIT);
    for (int i = 0; i < 4; i++) {
      pool.add(scan);
      assertNull(pool.verdict());
    }
    pool.add(scan(3000, s -> 0, ENTRY, INNER, EXIT));
    assertNull(pool.verdict(), "a piece that is unfit does not count");
    pool.add(scan);
    RollerVerdict verdict = Objects.requireNonNull(pool.verdict());
    assertEquals(5, verdict.pieces());
    assertEquals(new Finding.Named(EXIT), verdict.finding());
    pool.clear();
    assertNull(pool.verdict());
  }

  /** Squares of the amplitude less noise, and evidence of about 1, from pieces without ripple. */
  @Test
  void pointsOfPiecesWithoutRipple() {
    List<RipplePoint> points = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      Random random = new Random(i);
      double[] noise = random.doubles(130, -1, 1).toArray();
      DoubleUnaryOperator rough = s -> 0.0005 * noise[(int) Math.max(0, Math.min(129, s / 50))];
      points.addAll(scan(6000, rough, ENTRY, INNER, EXIT).points());
    }
    assertEquals(24, points.size());
    double evidence = points.stream().mapToDouble(RipplePoint::evidence).average().orElse(0);
    assertTrue(evidence > 0.4 && evidence < 1.9, "evidence " + evidence);
    assertNotNull(points.get(0).roller());
  }
}
