package org.chordlog.web;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.Standing;
import org.chordlog.report.qif.QifCapability;
import org.chordlog.report.qif.QifIssue;
import org.chordlog.report.qif.QifJob;
import org.chordlog.report.qif.QifWriter;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.Spread;
import org.chordlog.store.Store;
import org.chordlog.verdict.SignalWords;
import org.chordlog.verdict.StudiedGauge;
import org.jspecify.annotations.Nullable;

/**
 * A job as QIF results: its readings up to the last one that the statistics include, so that the
 * same record always gives the same bytes.
 */
public final class JobQif {
  private static final int MOST_ISSUES = 60;
  private static final int MOST_ATTEMPTS = 5;

  private final Store store;
  private final Monitor monitor;
  private final StudiedGauges studies;

  public JobQif(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
    this.studies = new StudiedGauges(store);
  }

  private record Judged(long lastReadingId, List<QifCapability> capabilities) {}

  /** Streams the document; throws {@link BadInput} for an unknown job. */
  public void write(long jobId, OutputStream out) throws IOException {
    QifJob document = of(jobId);
    QifWriter.write(document, out);
  }

  QifJob of(long jobId) {
    Job job =
        store
            .jobs()
            .find(jobId)
            .orElseThrow(() -> new BadInput("job", jobId, "does not exist", "the number of a job"));
    StudiedGauge studied = studies.of(job).orElse(null);
    Judged judged = judged(jobId, studied);
    return new QifJob(
        store.identity(),
        Web.version(),
        job,
        new StoredQifReadings(store, jobId, judged.lastReadingId()),
        judged.capabilities(),
        studies.forQif(job));
  }

  /** Again where a reading comes meanwhile; of a job that never rests the statistics of its end. */
  private Judged judged(long jobId, @Nullable StudiedGauge studied) {
    Judged judged;
    int attempts = 0;
    Standing before;
    do {
      before = upToDate(jobId);
      long last = before.readingId();
      judged =
          monitor.read(jobId, statistics -> new Judged(last, capabilities(statistics, studied)));
      attempts++;
    } while (attempts < MOST_ATTEMPTS && !monitor.standing(jobId).tag().equals(before.tag()));
    return judged;
  }

  /** Each look takes in more of a long job. */
  private Standing upToDate(long jobId) {
    Standing standing = monitor.standing(jobId);
    while (standing.behind() > 0) {
      standing = monitor.standing(jobId);
    }
    return standing;
  }

  private static List<QifCapability> capabilities(
      JobStatistics statistics, @Nullable StudiedGauge studied) {
    return statistics.characteristics().stream()
        .map(name -> capability(statistics, name, studied))
        .toList();
  }

  private static QifCapability capability(
      JobStatistics statistics, String name, @Nullable StudiedGauge studied) {
    boolean subgrouped = statistics.kinds(name).contains(ChartKind.MEAN);
    ChartSnapshot levels =
        statistics.chart(name, subgrouped ? ChartKind.MEAN : ChartKind.INDIVIDUALS);
    return new QifCapability(
        StudiedGauges.told(statistics.summary(name, Scope.JOB), studied),
        !statistics.control(name).notInControl(),
        !subgrouped || statistics.plan().charts().spread() == Spread.RANGE,
        limit(levels, LimitSpan::lower),
        limit(levels, LimitSpan::upper),
        issues(levels));
  }

  /** As at the newest point. */
  private static @Nullable Double limit(
      ChartSnapshot chart, Function<LimitSpan, @Nullable Double> side) {
    List<LimitSpan> spans = chart.limits();
    return spans.isEmpty() ? null : side.apply(spans.get(spans.size() - 1));
  }

  private static List<QifIssue> issues(ChartSnapshot chart) {
    List<ChartPoint> signalling = chart.points().stream().filter(ChartPoint::signalling).toList();
    List<QifIssue> issues =
        new ArrayList<>(
            signalling.stream().limit(MOST_ISSUES).map(each -> issue(chart, each)).toList());
    long more = chart.signallingCount() - issues.size();
    if (more > 0) {
      String says = String.format(Locale.ROOT, "%d more points broke a run test", more);
      issues.add(new QifIssue(says, List.of()));
    }
    return issues;
  }

  private static QifIssue issue(ChartSnapshot chart, ChartPoint point) {
    String title = PictureKind.of(chart.kind()).title();
    String says =
        point.signals().stream().map(SignalWords::of).distinct().collect(Collectors.joining("; "));
    return new QifIssue(title + ": " + says, List.of(point.lastReadingId()));
  }
}
