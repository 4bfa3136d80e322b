package org.chordlog.chart;

import java.util.List;
import java.util.stream.LongStream;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.PointExclusion;
import org.chordlog.stats.control.PointReadings;

/** A made-up chart that shows at start whether this machine can draw, and warms it up. */
final class RenderSelfTest {
  private RenderSelfTest() {}

  static ChartPicture draw() {
    ChartSnapshot mean = chart(ChartKind.MEAN);
    ChartSnapshot range = chart(ChartKind.RANGE);
    return SvgWriter.write(
        ControlPicture.of(List.of(mean, range)), new PictureSize(1000, 560), Theme.PAGE);
  }

  private static ChartSnapshot chart(ChartKind kind) {
    List<ChartPoint> points =
        LongStream.rangeClosed(1, 25).mapToObj(RenderSelfTest::point).toList();
    LimitSpan limits = new LimitSpan(1, 25, 0, -1.5, 1.5, false, 1);
    return new ChartSnapshot(
        kind,
        new Axis("Radius", "mm"),
        points,
        List.of(limits),
        List.of(),
        new Limits(null, null, null),
        new ChartSnapshot.Totals(25, 0));
  }

  private static ChartPoint point(long number) {
    return new ChartPoint(
        number,
        Math.sin((double) number),
        null,
        1,
        new PointReadings(number, number, 1, "middle", 0),
        new PointExclusion(false, ""),
        List.of());
  }
}
