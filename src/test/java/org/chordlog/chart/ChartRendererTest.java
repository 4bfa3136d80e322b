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
    try (ChartRenderer renderer = ChartRenderer.start()) {
      assertTrue(draw(renderer).orElseThrow().svg().startsWith("<svg"));
      assertEquals("", renderer.fault());
    }
  }

  @Test
  void goesWithoutPicturesWhereTheMachineCantDraw() {
    try (ChartRenderer renderer =
        new ChartRenderer(
            () -> {
              throw new NoClassDefFoundError("java/awt/Font");
            })) {
      renderer.warmUp();
      assertTrue(draw(renderer).isEmpty());
      assertFalse(renderer.fault().isEmpty());
    }
  }

  /** As Java says it when the graphics are loaded after SIGTERM. */
  @Test
  void aStopWhileItStartsIsNoFaultOfTheMachine() {
    try (ChartRenderer renderer =
        new ChartRenderer(
            () -> {
              throw new ExceptionInInitializerError(
                  new IllegalStateException("Shutdown in progress"));
            })) {
      renderer.warmUp();
      draw(renderer);
      assertEquals("", renderer.fault());
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

  @Test
  void wordsOfARunAreOnThePaperOfTheTheme() {
    Drawing drawing = ControlPicture.of(List.of(Charts.offCentre()));
    String dark = SvgWriter.write(drawing, SIZE, Theme.DARK).svg();
    assertTrue(dark.contains("21 in a row above"));
    assertTrue(dark.contains("#121a1d") && !dark.contains("white"));
    assertTrue(SvgWriter.write(drawing, SIZE, Theme.PAGE).svg().contains("var(--chart-paper,"));
  }

  private static Optional<ChartPicture> draw(ChartRenderer renderer) {
    return renderer.draw(ControlPicture.of(List.of(Charts.mean(12))), SIZE, Theme.PAGE).join();
  }
}
