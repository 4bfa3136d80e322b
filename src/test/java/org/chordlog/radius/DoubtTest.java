package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Face;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.Recorded;
import org.junit.jupiter.api.Test;

final class DoubtTest {
  private static final Master MASTER = new Master(1, "M", Face.INNER, 1000, 0.1);

  private static InterimCheck check(long at, boolean passed) {
    return new InterimCheck(
        at,
        "s",
        1,
        1,
        new InterimCheck.Comparison(passed ? 1000.0 : 1010.0, 1000, 5, passed),
        new Recorded(at, "me"));
  }

  private static Calibration calibration(long at) {
    List<Double> none = List.of(0.0, 0.0, 0.0);
    return new Calibration(
        1,
        "s",
        1,
        new Calibration.Fitted(200, 0, 0, List.of(none, none, none), 1),
        new Recorded(at, "me"),
        at + 1000,
        "");
  }

  @Test
  void readingsSinceTheLastPassAreInDoubtUntilTheNextOne() {
    List<InterimCheck> checks =
        List.of(check(40, false), check(10, true), check(20, true), check(30, false));
    assertEquals(List.of(new Doubt(20, Long.MAX_VALUE)), Doubt.of(checks, List.of()));
    assertEquals(List.of(new Doubt(20, 50)), Doubt.of(checks, List.of(calibration(50))));
  }

  @Test
  void withoutAPassEverythingIsInDoubtAndWithoutAFailNothing() {
    assertEquals(
        List.of(new Doubt(Long.MIN_VALUE, 9)),
        Doubt.of(List.of(check(5, false), check(9, true)), List.of()));
    assertEquals(List.of(), Doubt.of(List.of(check(9, true)), List.of()));
  }

  @Test
  void theEndsThemselvesAreTrusted() {
    Doubt doubt = new Doubt(20, 50);
    assertTrue(doubt.covers(21) && doubt.covers(49));
    assertFalse(doubt.covers(20) || doubt.covers(50));
  }

  @Test
  void aMasterIsReadOnItsOwnFaceWhateverTheJobIs() {
    RadiusModel model =
        RadiusModel.of(
            InterimVerdict.on(MASTER, RadiusModelTest.setUp(5, Face.OUTER, Face.CENTRELINE)));
    double depthMm = Chord.depthMm(-1 / 1003.0, 200, 5);
    InterimVerdict verdict = InterimVerdict.of(model.estimate(Length.nm(depthMm), 0, 1), MASTER, 5);
    assertTrue(verdict.passed());
    Double deviation = verdict.deviationMm();
    assertEquals(3, deviation == null ? Double.NaN : deviation, 1e-3);
    assertFalse(InterimVerdict.of(model.estimate(0, 0, 1), MASTER, 5).passed());
  }
}
