package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Roller;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.junit.jupiter.api.Test;

/** What is said of rollers, in each of the cases there are. */
final class RollerStatementTest {
  private static final Roller ENTRY = new Roller("entry roller", 180, 0, Face.OUTER, true);
  private static final Roller FEED = new Roller("feed roller", 32, 0, Face.OUTER, true);

  private static final RollerRipple RIPPLE = new RollerRipple(ENTRY, 565.5, 0.31, 0.02, 40, 1e-9);

  private static RollerVerdict verdict(int pieces, RollerVerdict.Finding finding) {
    List<RollerSight> sights =
        List.of(
            new RollerSight(ENTRY, 565.5, 0.8, null),
            new RollerSight(FEED, 100.5, 0, "a span of 200 mm shows only 0.0 % of it"));
    return new RollerVerdict(pieces, sights, List.of(RIPPLE), finding, null);
  }

  private static RollerTrend trend(long beyondFor) {
    return new RollerTrend("entry roller", 20, 3, 2.33, 0.2, 0.02, beyondFor, List.of(3.0));
  }

  @Test
  void aNamedRollerIsSaidWithItsAmplitudeHowToProveItAndTheCaution() {
    Statement said =
        new RollerStatement(verdict(12, new RollerVerdict.Finding.Named(ENTRY)), List.of(trend(7)))
            .statement();
    assertEquals("Entry roller makes a ripple", said.word());
    assertEquals(
        "0.31 ± 0.04 % of curvature, each 566 mm, over 12 pieces."
            + " It has been above its limit for 7 pieces.",
        said.reason().toString());
    assertTrue(said.advice().toString().contains("half round"), () -> said.advice().toString());
    assertTrue(
        said.advice().toString().contains("drive is locked out"), () -> said.advice().toString());
    assertEquals(Tone.OPEN, said.tone());
  }

  @Test
  void twoThatCantBeToldApartAreBothSaidWithTheLengthThatWouldTell() {
    Statement said =
        new RollerStatement(
                verdict(1, new RollerVerdict.Finding.OneOfTwo(ENTRY, FEED, 7200.0)), List.of())
            .statement();
    assertEquals("Entry roller or feed roller makes a ripple", said.word());
    assertTrue(
        said.reason().toString().contains("on the newest piece. It takes 7200 mm"),
        () -> said.reason().toString());
  }

  @Test
  void noneIsSaidTogetherWithWhatCantBeSeen() {
    Statement said =
        new RollerStatement(verdict(9, new RollerVerdict.Finding.NoRipple()), List.of(trend(0)))
            .statement();
    assertEquals(Tone.GOOD, said.tone());
    assertTrue(
        said.reason().toString().contains("Not seen: feed roller, a span of 200 mm"),
        () -> said.reason().toString());
  }

  @Test
  void aRippleThatRisesIsWarnedOfBeforeItStandsOut() {
    Statement said =
        new RollerStatement(verdict(9, new RollerVerdict.Finding.NoRipple()), List.of(trend(3)))
            .statement();
    assertEquals("The ripple of entry roller is rising", said.word());
    assertTrue(
        said.advice().toString().contains("drive is locked out"), () -> said.advice().toString());
  }

  @Test
  void withoutPiecesOrRollersNothingIsJudged() {
    assertEquals(Tone.QUIET, new RollerStatement(null, List.of()).statement().tone());
  }
}
