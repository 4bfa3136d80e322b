package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Scope;
import org.chordlog.verdict.SignalWords;

/** What of a job needs someone's attention, the most pressing first. */
record Attention(
    long jobId,
    @JsonPropertyDescription("the higher, the more pressing; 0: nothing") int weight,
    List<String> words) {
  private static final int NEWEST_POINTS = 10;
  private static final int NOT_CONFORMING = 100;
  private static final int SIGNAL = 50;
  private static final int NOT_CAPABLE = 20;
  private static final int UNDECIDED = 10;

  /** Gathers the findings of one job. */
  private static final class Findings {
    private final List<String> words = new ArrayList<>();
    private int weight;

    void add(int more, String text) {
      weight += more;
      words.add(text);
    }
  }

  static Attention of(Job job, Optional<Reading> newest, JobStatistics statistics) {
    Findings findings = new Findings();
    newest.ifPresent(reading -> decision(reading, findings));
    String first = statistics.characteristics().get(0);
    signals(statistics, first, findings);
    capability(statistics.summary(first, Scope.PHASE), findings);
    return new Attention(job.id(), findings.weight, findings.words);
  }

  private static void decision(Reading reading, Findings findings) {
    String which = " (piece " + reading.piece() + ", " + reading.position() + ")";
    if (reading.decision() == Decision.DOES_NOT_CONFORM) {
      findings.add(NOT_CONFORMING, "The newest reading does not conform" + which);
    } else if (reading.decision() == Decision.UNDECIDED) {
      findings.add(UNDECIDED, "The newest reading is undecided" + which);
    }
  }

  private static void signals(JobStatistics statistics, String name, Findings findings) {
    ChartSnapshot chart = statistics.chart(name, statistics.kinds(name).iterator().next());
    List<ChartPoint> points = chart.points();
    points.subList(Math.max(0, points.size() - NEWEST_POINTS), points.size()).stream()
        .filter(ChartPoint::signalling)
        .reduce((older, newer) -> newer)
        .ifPresent(
            point ->
                findings.add(
                    SIGNAL,
                    "Not in control at piece %d: %s"
                        .formatted(
                            point.piece(),
                            SignalWords.of(point.signals().get(0)).toLowerCase(Locale.ROOT))));
  }

  private static void capability(Summary summary, Findings findings) {
    Optional<Figure> index = summary.figure("Ppk");
    Double value = index.map(Figure::value).orElse(null);
    Double upper = index.map(Figure::upper).orElse(null);
    if (value != null && upper != null && upper < 1) {
      findings.add(
          NOT_CAPABLE,
          String.format(Locale.ROOT, "Not capable: Ppk %.2f, at most %.2f", value, upper));
    }
  }
}
