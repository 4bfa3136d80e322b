package org.chordlog.chart;

import java.util.List;
import java.util.Objects;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.drift.DriftSnapshot.Mark;
import org.chordlog.verdict.Words;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** What happened to a machine, over its pieces: settings above, jobs at the foot. */
record DriftMarks(List<Mark> marks) {
  private static final int LONGEST_NAME = 18;

  void lines(XYPlot plot) {
    for (Mark mark : marks) {
      boolean job = mark.kind() == Mark.Kind.JOB;
      plot.addDomainMarker(
          new ValueMarker(
              mark.pieces(),
              (job ? Ink.GRID : Ink.EVENT).color(),
              job ? ChartStyle.SOLID : ChartStyle.DOTTED),
          Layer.BACKGROUND);
    }
  }

  List<Overlay> strips() {
    return List.of(
        new EventStrip(Sign.flag(5), false, flags(false)),
        new EventStrip(Sign.post(5), true, flags(true)));
  }

  private List<EventStrip.Flag> flags(boolean jobs) {
    return marks.stream()
        .filter(mark -> (mark.kind() == Mark.Kind.JOB) == jobs)
        .map(mark -> new EventStrip.Flag(mark.pieces(), name(mark)))
        .toList();
  }

  List<Target> targets(ValueScale scale) {
    return marks.stream()
        .map(
            mark ->
                new Target(
                    mark.pieces(),
                    mark.kind() == Mark.Kind.JOB ? scale.low() : scale.high(),
                    words(mark)))
        .toList();
  }

  private static String words(Mark mark) {
    return mark.kind() == Mark.Kind.JOB
        ? "Job " + mark.words() + " begins"
        : name(mark) + (mark.words().isEmpty() ? "" : ": " + mark.words());
  }

  private static String name(Mark mark) {
    return switch (mark.kind()) {
      case CORRECTION -> Words.label(JobEvent.Kind.CORRECTION);
      case SET_UP -> Words.label(JobEvent.Kind.SET_UP);
      case MATERIAL_LOT -> Words.label(JobEvent.Kind.MATERIAL_LOT);
      case WORK -> "Work";
      case JOB -> shortened(Objects.requireNonNull(mark.words()));
    };
  }

  private static String shortened(String name) {
    return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "…";
  }
}
