package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.stats.drift.DriftSnapshot;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

final class DriftPictureTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  @Test
  void equalPiecesGiveAnAxisAndLimitsThatCanBeRead() {
    List<String> texts = texts("drift-equal", equal(-0.05964, 2.0 / 3));
    assertEquals(List.of("limit 0.667 (above)", "limit −0.667 (below)"), labels(texts));
    List<String> ticks = texts.stream().filter(text -> text.matches("[-−]?0\\.\\d+")).toList();
    assertTrue(ticks.size() > 1, texts::toString);
    assertTrue(ticks.stream().allMatch(tick -> tick.length() <= 5), ticks::toString);
  }

  @Test
  void limitsSayFourDigitsAtMost() {
    assertEquals(
        List.of("limit 1235 (above)", "limit −1235 (below)"),
        labels(texts("drift-large", equal(3, 1234.5678))));
    assertEquals(
        List.of("limit 0.00123 (above)", "limit −0.00123 (below)"),
        labels(texts("drift-small", equal(0.00001, 0.0012345678))));
  }

  @Test
  void labelsEndInsideThePicture() {
    SideLabels wide =
        new SideLabels(List.of(new SideLabels.Label(0, "limit 123456789.25 mm", Ink.LIMIT)));
    double width = ChartFonts.boldWidthPx("limit 123456789.25 mm", ChartStyle.TEXT_PX);
    assertTrue(width > ChartStyle.RIGHT_MARGIN_PX, () -> "" + width);
    assertTrue(wide.rightPx() > width, () -> wide.rightPx() + " for " + width);
    Document svg = draw("drift-inside", equal(0.00001, 0.0012345678));
    for (Element text : Svg.elements(svg, "text")) {
      if (text.getTextContent().startsWith("limit")) {
        double end =
            Double.parseDouble(text.getAttribute("x"))
                + ChartFonts.boldWidthPx(text.getTextContent(), ChartStyle.TEXT_PX);
        assertTrue(end <= SIZE.widthPx(), () -> text.getTextContent() + " ends at " + end);
      }
    }
  }

  private static List<String> labels(List<String> texts) {
    return texts.stream().filter(text -> text.startsWith("limit")).toList();
  }

  private static List<String> texts(String name, DriftSnapshot drift) {
    return Svg.elements(draw(name, drift), "text").stream()
        .map(Element::getTextContent)
        .map(String::strip)
        .toList();
  }

  private static Document draw(String name, DriftSnapshot drift) {
    ChartPicture picture = SvgWriter.write(DriftPicture.of(drift), SIZE, Theme.PAGE);
    Svg.keep(name, picture);
    return Svg.parse(picture.svg());
  }

  /** All but equal: a millionth apart. */
  private static DriftSnapshot equal(double deviation, double limit) {
    List<DriftSnapshot.BlockMean> pieces =
        IntStream.rangeClosed(1, 12)
            .mapToObj(
                n ->
                    new DriftSnapshot.BlockMean(
                        n, "", n, 0, deviation * (1 + n % 2 * 1e-6), null, null))
            .toList();
    return new DriftSnapshot(
        "rolls 1",
        "deviation of radius",
        "%",
        pieces,
        List.of(),
        12,
        -limit,
        limit,
        null,
        "still",
        List.of());
  }
}
