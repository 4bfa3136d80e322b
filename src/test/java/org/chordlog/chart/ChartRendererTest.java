package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class ChartRendererTest {
  private static final PictureSize SIZE = new PictureSize(800, 480);

  @Test
  void drawsAfterItsTrial() {
    try (ChartRenderer draughtsman = ChartRenderer.start()) {
      assertTrue(draw(draughtsman).orElseThrow().svg().startsWith("<svg"));
      assertEquals("", draughtsman.fault());
    }
  }

  @Test
  void goesWithoutPicturesWhereTheMachineCantDraw() {
    try (ChartRenderer draughtsman =
        new ChartRenderer(
            () -> {
              throw new NoClassDefFoundError("java/awt/Font");
            })) {
      draughtsman.warmUp();
      assertTrue(draw(draughtsman).isEmpty());
      assertFalse(draughtsman.fault().isEmpty());
    }
  }

  @Test
  void coloursFollowTheThemeWithoutAStyleSheet() {
    Drawing drawing = ControlPicture.of(List.of(Charts.mean(12)));
    String page = SvgWriter.write(drawing, SIZE, Theme.PAGE).svg();
    String dark = SvgWriter.write(drawing, SIZE, Theme.DARK).svg();
    assertTrue(page.contains("var(--chart-point,#14607a)"), page);
    assertFalse(page.contains("<style"), page);
    assertTrue(dark.contains("#6cc4dd") && !dark.contains("var("), dark);
    assertTrue(Theme.css().contains("--chart-point:#6cc4dd"));
  }

  private static Optional<ChartPicture> draw(ChartRenderer draughtsman) {
    return draughtsman
        .draw(() -> ControlPicture.of(List.of(Charts.mean(12))), SIZE, Theme.PAGE)
        .join();
  }
}
