package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.correction.TrailPoint;
import org.chordlog.measure.Lengths;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

final class CorrectionPictureTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  @Test
  void eachPieceAndEachEventCanBePointedAt() {
    CorrectionTrail trail = Trails.run(40);
    List<PointPlace> above =
        draw(trail, "corrections").places().stream().filter(each -> each.panel() == 0).toList();
    assertEquals(trail.points().size(), above.size());
    assertEquals(40, above.stream().filter(each -> each.label().startsWith("Piece ")).count());
    assertTrue(above.stream().anyMatch(each -> each.label().equals("New lot: B")));
  }

  @Test
  void whatThereIsOneOfIsSaidSo() {
    String said = draw(Trails.run(10), "corrections-said").svg();
    assertTrue(said.contains(", 1 correction; level now "), said);
  }

  @Test
  void aCorrectionSaysWhatWasAdvisedAndWhatWasDone() {
    TrailPoint correction =
        Trails.run(10).points().stream()
            .filter(each -> each.kind() == TrailPoint.Kind.CORRECTION)
            .findFirst()
            .orElseThrow();
    TrailPoint other =
        new TrailPoint(
            correction.kind(),
            correction.where(),
            correction.level(),
            correction.gain(),
            new TrailPoint.Move(0.08, 0.1));
    List<TrailPoint> points = new java.util.ArrayList<>(Trails.run(3).points());
    points.add(other);
    assertTrue(
        draw(new CorrectionTrail("rolls 1", "mm", points, Lengths.MM), "corrections-other")
            .places()
            .stream()
            .anyMatch(
                each -> each.label().equals("Correction: +0.100 mm; advised before: +0.080 mm")));
  }

  /** Beneath both panels, not within the lower one. */
  @Test
  void whatItsSignsMeanIsBeneathIt() {
    String svg = draw(Trails.run(12), "corrections-legend").svg();
    Element piece =
        Svg.elements(Svg.parse(svg), "text").stream()
            .filter(each -> each.getTextContent().equals("piece"))
            .findFirst()
            .orElseThrow();
    assertTrue(Double.parseDouble(piece.getAttribute("y")) > SIZE.heightPx() - 40, svg);
  }

  /** What a unit does is drawn only once it is known. */
  @Test
  void aGainThatNobodyKnowsIsNotDrawn() {
    CorrectionTrail known = Trails.run(12);
    assertEquals(2, CorrectionPicture.of(known).panels());
    List<TrailPoint> blind =
        known.points().stream()
            .map(
                each ->
                    new TrailPoint(
                        each.kind(),
                        each.where(),
                        each.level(),
                        new TrailPoint.Gain(0, 1e-3),
                        each.move()))
            .toList();
    assertEquals(
        1, CorrectionPicture.of(new CorrectionTrail("m", "turns", blind, Lengths.MM)).panels());
  }

  @Test
  void theDeadbandIsNamedBesideIt() {
    ChartPicture picture = draw(Trails.run(25), "corrections-deadband");
    List<String> texts =
        Svg.elements(Svg.parse(picture.svg()), "text").stream()
            .map(Element::getTextContent)
            .toList();
    // half tolerance 12 of 1800 mm = 0.667 %, times the root of 0.5 / 15
    assertTrue(texts.contains("leave 0.12"), texts::toString);
    assertTrue(texts.contains("leave −0.12"), texts::toString);
  }

  @Test
  void aJobHasItsPartOfTheTrail() {
    assertTrue(Trails.run(5).ofJob(1).measured());
    assertFalse(Trails.run(5).ofJob(2).measured());
  }

  private static ChartPicture draw(CorrectionTrail trail, String name) {
    ChartPicture picture = SvgWriter.write(CorrectionPicture.of(trail), SIZE, Theme.PAGE);
    Svg.keep(name, picture);
    return picture;
  }
}
