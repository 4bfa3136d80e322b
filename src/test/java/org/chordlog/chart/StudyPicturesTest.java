package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.math.Factors;
import org.junit.jupiter.api.Test;

final class StudyPicturesTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  private static ChartPicture draw(PictureKind kind, StudySnapshot study, String name) {
    ChartSource source = new OneStudy(study);
    ChartPicture picture = SvgWriter.write(kind.draw(source).orElseThrow(), SIZE, Theme.LIGHT);
    Svg.keep(name, picture);
    return picture;
  }

  private static List<PointPlace> panel(ChartPicture picture, int panel) {
    return picture.places().stream().filter(each -> each.panel() == panel).toList();
  }

  @Test
  void eachCellIsToldWithItsReadingsAndItsRange() {
    StudySnapshot study =
        new StudySnapshot("mm", "Piece", StudySnapshots.cells(5, 2), List.of(), null, null);
    ChartPicture picture = draw(PictureKind.STUDY_READINGS, study, "study-readings");
    assertEquals(15, panel(picture, 0).size());
    assertEquals(15, panel(picture, 1).size());
    assertTrue(panel(picture, 0).get(0).label().startsWith("Ann, 1: mean 17"));
    List<String> above =
        panel(picture, 1).stream()
            .map(PointPlace::label)
            .filter(each -> each.endsWith("above its limit"))
            .toList();
    assertEquals(1, above.size(), "the piece that slipped");
    assertTrue(above.get(0).startsWith("Żak, 5: range "), above.get(0));
    assertTrue(picture.svg().contains("1 above."), "in words too");
  }

  /** D4 = 3.267 for two repeats (ASTM E2587, table of factors). */
  @Test
  void theLimitOfRangesIsThatOfARangeChart() {
    CellSpread two = CellSpread.of(StudySnapshots.cells(5, 2));
    assertTrue(two.ranges());
    assertEquals(3.267, two.upper() / two.centre(), 0.0005);
    assertEquals(0, two.lower());
  }

  /** B3 and B4 of more repeats than a range is good for; 25 is the largest of the table. */
  @Test
  void manyRepeatsAreComparedByTheirStandardDeviations() {
    CellSpread many = CellSpread.of(StudySnapshots.cells(2, 25));
    assertFalse(many.ranges());
    assertEquals(Factors.of(25).b4(), many.upper() / many.centre(), 1e-9);
    assertEquals(Factors.of(25).b3(), many.lower() / many.centre(), 1e-9);
    assertEquals(1.435, many.upper() / many.centre(), 0.0005, "ASTM E2587");
    CellSpread more = CellSpread.of(StudySnapshots.cells(2, 40));
    assertTrue(more.upper() / more.centre() < many.upper() / many.centre());
  }

  private static StudySnapshot overDays(List<StudySnapshot.Cell> days) {
    return new StudySnapshot("mm", "Day", days, List.of(), null, 1800.0);
  }

  private static StudySnapshot.Cell day(int day, double... values) {
    List<Double> boxed = Arrays.stream(values).boxed().toList();
    return new StudySnapshot.Cell("Ann", "day " + day, boxed);
  }

  /** A2 = 1.023 for three repeats, E2 = 2.660 (ASTM E2587, table of factors). */
  @Test
  void daysOfAMasterHaveLimitsAndTheMastersLine() {
    List<StudySnapshot.Cell> days =
        List.of(
            day(1, 1800, 1801, 1802),
            day(2, 1801, 1802, 1803),
            day(3, 1800, 1801, 1802),
            day(4, 1806, 1807, 1808));
    MeanLimits of = MeanLimits.of(days, CellSpread.of(days));
    assertEquals(1802.75, of.centre(), 1e-9);
    assertEquals(1.023 * 2, of.upper() - of.centre(), 0.001);
    ChartPicture picture = draw(PictureKind.STUDY_READINGS, overDays(days), "study-over-days");
    assertEquals(4, panel(picture, 0).size());
    assertTrue(panel(picture, 0).get(3).label().endsWith("beyond its limits"));
    assertFalse(panel(picture, 0).get(1).label().contains("beyond"));
    assertTrue(picture.svg().contains("master 1800"), picture.svg());
    assertTrue(picture.svg().contains("1 beyond. Master 1800"), "in words too");
  }

  /** On a phone there is no room for the name of every day. */
  @Test
  void aNameThatWouldTouchTheOneBeforeItIsLeftOut() {
    List<StudySnapshot.Cell> days = new ArrayList<>();
    for (int day = 1; day <= 12; day++) {
      days.add(day(day, 1800, 1801 + day % 3));
    }
    ChartSource source = new OneStudy(overDays(days));
    Drawing drawing = PictureKind.STUDY_READINGS.draw(source).orElseThrow();
    String narrow = SvgWriter.write(drawing, new PictureSize(390, 400), Theme.LIGHT).svg();
    assertTrue(narrow.contains(">day 1<"), narrow);
    assertFalse(narrow.contains(">day 2<"), narrow);
    String wide = SvgWriter.write(drawing, SIZE, Theme.LIGHT).svg();
    assertTrue(wide.contains(">day 2<") && wide.contains(">day 12<"), wide);
  }

  /** Twelve people on two pieces: each name once, side by side where there is room, else turned. */
  @Test
  void everyOperatorIsNamedHoweverNarrowThePicture() {
    List<StudySnapshot.Cell> cells = new ArrayList<>();
    for (int who = 1; who <= 12; who++) {
      for (int piece = 1; piece <= 2; piece++) {
        cells.add(
            new StudySnapshot.Cell("Operator " + who, "" + piece, List.of(1800.0, 1800.5 + who)));
      }
    }
    StudySnapshot study = new StudySnapshot("mm", "Piece", cells, List.of(), null, null);
    Drawing drawing = PictureKind.STUDY_READINGS.draw(new OneStudy(study)).orElseThrow();
    for (int width : new int[] {320, 390, 768, 1600}) {
      ChartPicture drawn = SvgWriter.write(drawing, new PictureSize(width, 480), Theme.LIGHT);
      Svg.keep("study-of-twelve-" + width, drawn);
      assertTrue(drawn.svg().matches("(?s).*font-weight=.normal.[^>]*>Operator 1<.*"), "not bold");
      for (int who = 1; who <= 12; who++) {
        assertTrue(drawn.svg().contains(">Operator " + who + "<"), width + " px, " + who);
      }
    }
  }

  @Test
  void singleReadingsOfDaysAreHeldAgainstTheirMovingRange() {
    List<StudySnapshot.Cell> days = List.of(day(1, 1800), day(2, 1801), day(3, 1800));
    MeanLimits of = MeanLimits.of(days, null);
    assertEquals(2.660, of.upper() - of.centre(), 0.002, "the table has d2 rounded to 1.128");
    ChartPicture picture = draw(PictureKind.STUDY_READINGS, overDays(days), "study-single-days");
    assertTrue(picture.svg().contains("0 beyond"), picture.svg());
  }

  @Test
  void withoutRepeatsThereIsNoSpreadToShow() {
    StudySnapshot study =
        new StudySnapshot("mm", "Piece", StudySnapshots.cells(5, 1), List.of(), null, null);
    ChartPicture picture = draw(PictureKind.STUDY_READINGS, study, "study-one-repeat");
    assertTrue(panel(picture, 1).isEmpty());
    assertEquals(15, panel(picture, 0).size());
  }

  @Test
  void anOpenEndOfAnIntervalIsCalledOpen() {
    StudySnapshot study =
        new StudySnapshot("mm", "Piece", List.of(), StudySnapshots.components(), null, null);
    ChartPicture picture = draw(PictureKind.STUDY_COMPONENTS, study, "study-components");
    List<String> labels = picture.places().stream().map(PointPlace::label).toList();
    assertEquals("EV, repeatability: 1.10 mm, 95 % interval 0.80 to 1.70", labels.get(0));
    assertEquals("PV, between parts: 6.30 mm, 95 % interval 3.70 to open", labels.get(3));
  }

  @Test
  void theBandOfTheBiasIsToldOverDepthAndOverCount() {
    for (boolean overDepth : new boolean[] {true, false}) {
      StudySnapshot study =
          new StudySnapshot(
              "mm", "Piece", List.of(), List.of(), StudySnapshots.bias(overDepth), null);
      ChartPicture picture = draw(PictureKind.STUDY_BIAS, study, "study-bias-" + overDepth);
      assertEquals(12, picture.places().size());
      assertTrue(picture.svg().contains("95 % band 0.0025"), picture.svg());
      assertTrue(picture.svg().contains(overDepth ? "Depth of the master, mm" : "Measurement"));
    }
  }

  /** A source of a study alone. */
  private record OneStudy(StudySnapshot snapshot) implements ChartSource {
    @Override
    public Optional<ChartSnapshot> chart(ChartKind kind) {
      return Optional.empty();
    }

    @Override
    public Optional<StudySnapshot> study() {
      return Optional.of(snapshot);
    }
  }
}
