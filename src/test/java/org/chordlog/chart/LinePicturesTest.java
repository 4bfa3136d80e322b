package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What the pictures of a gauge in a line say in words, and that straight ends do not stretch them.
 */
final class LinePicturesTest {
  private static final PictureSize SIZE = new PictureSize(1000, 420);

  private static ChartPicture drawn(PictureKind kind, ViewUnit unit) {
    return SvgWriter.write(kind.draw(unit.of(new Snapshots())).orElseThrow(), SIZE, Theme.LIGHT);
  }

  private static String described(PictureKind kind) {
    return Svg.parse(drawn(kind, ViewUnit.MM).svg())
        .getDocumentElement()
        .getAttribute("aria-label");
  }

  @Test
  void aProfileIsSaidWithItsEvaluatedLengthAndItsExtremes() {
    String said = described(PictureKind.PROFILES);
    assertTrue(said.contains("piece 12, and 2 pieces before it"), said);
    assertTrue(said.contains("evaluated from 450 to 5550 mm"), said);
    List<PointPlace> places = drawn(PictureKind.PROFILES, ViewUnit.MM).places();
    assertEquals(103, places.size());
    assertTrue(places.get(0).label().startsWith("piece 12 at 450 mm: R 18"), places.get(0)::label);
  }

  @Test
  void inInchesPlacesAndRadiiAre() {
    String label = drawn(PictureKind.PROFILES, ViewUnit.INCH).places().get(0).label();
    assertTrue(label.startsWith("piece 12 at 17.7 in: R 7"), label);
  }

  @Test
  void aPieceThatStillRunsHasNoEvaluatedLength() {
    LineSnapshot.Trace trace = LineSnapshots.trace(3);
    LineSnapshot.Trace running =
        new LineSnapshot.Trace("the piece that runs", trace.spots(), List.of());
    LineSnapshot line =
        new LineSnapshot(
            "mm",
            new LineSnapshot.Profiles(List.of(running), 1800, 1788.0, 1812.0),
            null,
            List.of());
    ChartPicture picture =
        SvgWriter.write(ProfilePicture.of(line).orElseThrow(), SIZE, Theme.LIGHT);
    assertTrue(picture.svg().contains("which still runs through"));
    assertTrue(picture.places().get(0).label().endsWith("straight, or nearly"));
  }

  @Test
  void theSpectrumNamesTheRollerWhereItIsStrongest() {
    String said = described(PictureKind.ROLLER_SPECTRUM);
    assertTrue(said.contains("where entry roller would show"), said);
  }

  @Test
  void aRollerAboveItsLimitIsSaid() {
    String said = described(PictureKind.ROLLER_RIPPLES);
    assertTrue(said.contains("entry roller: 0.31 % of curvature, above its limit"), said);
    assertTrue(said.contains("inner roller: 0.02 % of curvature, within its limit"), said);
  }
}
