package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;

final class PictureKindTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  @ParameterizedTest
  @EnumSource
  void isDrawnInsideItsFrameWithWordsForThoseWhoCantSeeIt(PictureKind kind) {
    ChartPicture picture =
        SvgWriter.write(kind.draw(new Snapshots()).orElseThrow(), SIZE, Theme.PAGE);
    Svg.keep(kind.name(), picture);
    Document svg = Svg.parse(picture.svg());
    assertEquals("img", svg.getDocumentElement().getAttribute("role"));
    assertFalse(svg.getDocumentElement().getAttribute("aria-label").isBlank());
    assertFalse(picture.places().isEmpty());
    for (PointPlace place : picture.places()) {
      assertTrue(place.xPx() >= 0 && place.xPx() <= 1000 && !place.label().isBlank(), place::label);
      assertTrue(place.yPx() >= 0 && place.yPx() <= 560, place::label);
    }
  }

  @ParameterizedTest
  @EnumSource
  void isLeftOutWhereThereIsNothingToShow(PictureKind kind) {
    ChartSource nothing =
        new ChartSource() {
          @Override
          public Optional<ChartSnapshot> chart(ChartKind wanted) {
            return Optional.empty();
          }
        };
    assertTrue(kind.draw(nothing).isEmpty());
  }

  /** Of three curves one is named left of the axis' name, where the right has no room for all. */
  @Test
  void eachCurveOfADistributionIsNamed() {
    DistributionSnapshot two = new Snapshots().distribution().orElseThrow();
    List<DistributionSnapshot.Curve> curves = new ArrayList<>(two.curves());
    curves.add(
        0, new DistributionSnapshot.Curve("Johnson SU (unbounded)", curves.get(0).densities()));
    DistributionSnapshot three =
        new DistributionSnapshot(
            two.axis(), two.bins(), curves, two.specification(), two.mean(), two.count());
    String svg =
        SvgWriter.write(DistributionPicture.of(three), new PictureSize(860, 300), Theme.PAGE).svg();
    for (DistributionSnapshot.Curve curve : curves) {
      assertTrue(svg.contains(">" + curve.name() + "<"), svg);
    }
  }

  @ParameterizedTest
  @EnumSource
  void hasItsRowInTheDocuments(PictureKind kind) throws IOException {
    String row = "| " + kind.title() + " |";
    assertTrue(
        Files.readString(Path.of("src/docs/service.md")).contains(row),
        () -> "src/docs/service.md has no row " + row + " under Charts");
  }
}
