package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

final class ControlPictureTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  @Test
  void hundredPointsStayBelow60Kilobytes() {
    ChartPicture picture = draw("mean-range", Charts.mean(100), Charts.range(100));
    int bytes = picture.svg().length();
    assertTrue(bytes < 60_000, "two panels: " + bytes);
    int one =
        draw("individuals", Charts.control(ChartKind.INDIVIDUALS, 100, 1801, 2.2)).svg().length();
    assertTrue(one < 30_000, "one panel: " + one);
  }

  @Test
  void placesAgreeWithTheDrawnSigns() {
    ChartPicture picture = draw("places", Charts.mean(30));
    Document svg = Svg.parse(picture.svg());
    for (PointPlace place : picture.places()) {
      assertTrue(
          Svg.signs(svg).stream().anyMatch(s -> s.distance(place.xPx(), place.yPx()) < 0.6),
          () -> "no sign at " + place);
    }
    assertEquals(30, picture.places().size());
  }

  @Test
  void drawsWithoutPointsWithOneAndWithEqualOnes() {
    for (int count : new int[] {0, 1, 2}) {
      ChartPicture picture = draw("count-" + count, Charts.mean(count), Charts.range(count));
      assertEquals(2 * count, picture.places().size());
    }
    ChartSnapshot equal =
        Charts.with(
            ChartKind.INDIVIDUALS,
            java.util.stream.LongStream.range(1, 9)
                .mapToObj(n -> Charts.point(n, 1800, false, 0))
                .toList(),
            List.of(),
            List.of());
    assertEquals(8, draw("equal", equal).places().size());
  }

  /** EWMA and CUSUM count what they are made of, as the mean does. */
  @Test
  void namesWhatItsPointsAre() {
    assertEquals("Subgroup", ChartWords.counted(Charts.control(ChartKind.EWMA, 9, 1801, 2.2)));
    assertEquals("Reading", ChartWords.counted(Charts.cusum(9)));
    ChartPicture picture = draw("ewma", Charts.control(ChartKind.EWMA, 9, 1801, 2.2));
    assertTrue(picture.svg().contains(">Subgroup<"), picture.svg());
    assertTrue(picture.places().get(0).label().startsWith("Subgroup 1: "));
  }

  private static ChartPicture draw(String name, ChartSnapshot... charts) {
    ChartPicture picture = SvgWriter.write(ControlPicture.of(List.of(charts)), SIZE, Theme.PAGE);
    Svg.keep(name, picture);
    return picture;
  }
}
