package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
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
            new RollerSight(
                FEED,
                100.5,
                0,
                Sentence.of("a span of %s shows only 0.0 %% of it", Quantity.stated(200))));
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
        "0.31 ± 0.04 % of curvature, every 566 mm, over 12 pieces."
            + " It has been above its limit for 7 pieces."
            + " Once a turn: it runs eccentric, or its shaft is bent.",
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
        said.reason().toString().contains("over 9 pieces. Not seen: feed roller, a span of 200 mm"),
        () -> said.reason().toString());
    assertTrue(said.reason().in(Lengths.INCH).contains("a span of 7.874 in shows only 0.0 %"));
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
  void aPieceThatTellsNothingOfRollersSaysWhy() {
    Sentence why = Sentence.of("%s are evaluated", Quantity.fixed(2400, 0));
    RollerVerdict unfit =
        new RollerVerdict(0, List.of(), List.of(), new RollerVerdict.Finding.NoRipple(), why);
    Statement said = new RollerStatement(unfit, List.of()).statement();
    assertEquals(Tone.QUIET, said.tone());
    assertEquals("On the newest piece, 2400 mm are evaluated.", said.reason().toString());
    assertEquals("On the newest piece, 94.49 in are evaluated.", said.reason().in(Lengths.INCH));
  }

  @Test
  void withoutPiecesOrRollersNothingIsJudged() {
    assertEquals(Tone.QUIET, new RollerStatement(null, List.of()).statement().tone());
  }

  private static Statement said(RollerVerdict.Finding once, RollerVerdict.Finding twice) {
    return new RollerStatement(verdict(12, once), verdict(12, twice), List.of(trend(0)))
        .statement();
  }

  @Test
  void whatTheNumberOfWavesATurnTellsOfTheRollerIsSaid() {
    RollerVerdict.Finding none = new RollerVerdict.Finding.NoRipple();
    RollerVerdict.Finding entry = new RollerVerdict.Finding.Named(ENTRY);
    Statement eccentric = said(entry, none);
    assertTrue(
        eccentric.reason().toString().endsWith("it runs eccentric, or its shaft is bent."),
        () -> eccentric.reason().toString());
    Statement both = said(entry, entry);
    assertTrue(
        both.reason().toString().contains("twice a turn as well (0.31 ± 0.04 %"),
        () -> both.reason().toString());
    Statement oval = said(none, entry);
    assertEquals("Entry roller is out of round", oval.word());
    assertEquals(
        "A ripple twice a turn: 0.31 ± 0.04 % of curvature, every 566 mm, over 12 pieces.",
        oval.reason().toString());
    assertTrue(oval.advice().toString().contains("a quarter turn"));
    assertTrue(oval.advice().toString().contains("drive is locked out"));
    assertEquals("No roller makes a ripple", said(none, none).word());
  }
}
