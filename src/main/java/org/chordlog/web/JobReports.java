package org.chordlog.web;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.chart.CorrectionTrail;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.RollerWatch;
import org.chordlog.report.JobReport;
import org.chordlog.report.ReadingCounts;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlongStatement;
import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.RollerStatement;
import org.chordlog.verdict.StudiedGauge;
import org.jspecify.annotations.Nullable;

/** Gathers a job's report from the store and the monitor. */
public final class JobReports {
  private static final int MOST_READINGS = 5_000;

  /** Even of a job that never rests. */
  private static final int MOST_GATHERED = 5;

  /** Pieces that ran through, drawn over one another. */
  private static final int LINE_PIECES = 10;

  private static final int MOST_TALLIED = 200_000;
  private static final int PAGE = 1_000;

  private final Store store;
  private final Monitor monitor;
  private final StudiedGauges studies;
  private final RollerWatch rollers;

  public JobReports(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
    this.studies = new StudiedGauges(store);
    this.rollers = new RollerWatch(store);
  }

  /**
   * As of one moment: gathered again, at most {@value #MOST_GATHERED} times in all, where the job
   * went on meanwhile. Throws {@link BadInput} for an unknown job.
   */
  public JobReport of(long jobId, JobReport.Printing printing) {
    Moment before = moment(jobId);
    JobReport report = gathered(jobId, printing);
    Moment after = moment(jobId);
    for (int times = 1; times < MOST_GATHERED && !after.equals(before); times++) {
      before = after;
      report = gathered(jobId, printing);
      after = moment(jobId);
    }
    return report;
  }

  /** How much there is of what a report is made of. */
  private record Moment(long readings, int exclusions, int events, int revisions) {}

  private Moment moment(long jobId) {
    return new Moment(
        store.readings().countOfJob(jobId),
        store.readings().exclusionsOfJob(jobId).size(),
        store.jobs().eventsOfJob(jobId).size(),
        store.jobs().revisions(jobId).size());
  }

  private JobReport gathered(long jobId, JobReport.Printing printing) {
    Job job =
        store
            .jobs()
            .find(jobId)
            .orElseThrow(() -> new BadInput("job", jobId, "does not exist", "the number of a job"));
    List<Reading> readings =
        new ArrayList<>(store.readings().latestOfJob(jobId, Long.MAX_VALUE, MOST_READINGS));
    Collections.reverse(readings);
    GaugeOfReport gauge = new GaugeOfReport(store, readings);
    JobReport.Measured measured =
        new JobReport.Measured(
            readings,
            store.readings().countOfJob(jobId),
            store.readings().exclusionsOfJob(jobId),
            gauge.setUps(),
            decisions(readings),
            tally(job));
    return new JobReport(
        job,
        measured,
        log(job, measured.tally()),
        statistics(job),
        new JobReport.Gauge(
            measured.newest().map(gauge::uncertainty).orElse(List.of()),
            gauge.checks(job.station())),
        printing);
  }

  /** Of at most the oldest {@value #MOST_TALLIED} readings, against the limits in force. */
  private ReadingCounts tally(Job job) {
    ReadingCounts tally = new ReadingCounts(job.plan().positions());
    ReadingViews views = new ReadingViews(store);
    long after = 0;
    List<Reading> page;
    int left = MOST_TALLIED;
    do {
      page = store.readings().ofJob(job.id(), after, PAGE);
      views.of(page).forEach(each -> add(each, tally));
      after = page.isEmpty() ? after : page.get(page.size() - 1).id();
      left -= page.size();
    } while (page.size() == PAGE && left > 0);
    if (job.state() == Job.State.OPEN || page.size() == PAGE) {
      tally.goesOn();
    }
    return tally;
  }

  private static void add(ReadingView reading, ReadingCounts tally) {
    String excluded = reading.excludedReason();
    if (excluded == null) {
      tally.add(reading.piece(), reading.position(), reading.decision());
      tally.addLot(Objects.requireNonNullElse(reading.materialLot(), ""));
    } else {
      tally.addExcluded(reading.piece(), reading.position(), excluded);
    }
  }

  /**
   * Of what was measured; before the first reading the one in the machine. Of a job that is too
   * long to tally also the newest.
   */
  private List<String> lots(Job job, ReadingCounts tally) {
    boolean whole = store.readings().countOfJob(job.id()) <= MOST_TALLIED;
    List<String> measured = whole ? tally.lots() : List.of();
    return measured.isEmpty() ? told(job, tally) : measured;
  }

  private List<String> told(Job job, ReadingCounts tally) {
    Stream<String> newest = store.jobs().materialLot(job.id()).stream();
    return Stream.concat(tally.lots().stream(), newest).distinct().toList();
  }

  private JobReport.Log log(Job job, ReadingCounts tally) {
    return new JobReport.Log(
        store.jobs().countingOfJob(job.id()),
        causes(job),
        store.jobs().revisions(job.id()),
        lots(job, tally),
        store.seal());
  }

  private Map<Long, Decision> decisions(List<Reading> readings) {
    return new ReadingViews(store)
        .of(readings).stream().collect(Collectors.toMap(ReadingView::id, ReadingView::decision));
  }

  private JobReport.Statistics statistics(Job job) {
    String first = monitor.read(job.id(), running -> running.characteristics().get(0));
    List<LotSummary> lots = splits(job) ? monitor.lots(job.id(), first) : List.of();
    PassSummary passes = splits(job) ? monitor.passes(job.id()) : PassSummary.NONE;
    CorrectionTrail trail =
        CorrectionTrail.of(job.machine(), monitor.advice(job.machine(), "")).ofJob(job.id());
    StudiedGauge studied = studies.of(job).orElse(null);
    List<LotSummary> told = lots.stream().map(lot -> StudiedGauges.told(lot, studied)).toList();
    Optional<LineSnapshot> profiles = new JobLine(store).snapshot(job, LINE_PIECES);
    Optional<RollerWatch.Report> found = profiles.map(any -> rollers.of(job));
    Optional<LineSnapshot> line =
        found.flatMap(report -> profiles.map(each -> RollerCharts.with(each, report)));
    Optional<JobReport.OfLine> ofLine = found.map(report -> ofLine(job, report));
    return monitor.read(
        job.id(),
        running ->
            new JobReport.Statistics(
                summaries(running, studied),
                verdict(job, running, first, studied),
                new JobLine.Beside(new CorrectionCharts(trail, JobCharts.kept(running)), line),
                told,
                passes,
                ofLine));
  }

  private JobReport.OfLine ofLine(Job job, RollerWatch.Report found) {
    RollerStatement said = new RollerStatement(found.verdict(), found.twice(), found.trends());
    List<JobReport.Along> along =
        monitor.readAlong(
            job.id(),
            all -> Stream.of(AlongMeasure.values()).map(each -> along(job, all, each)).toList());
    return new JobReport.OfLine(said.statement(), said.figures(found.rollers()), along);
  }

  private JobReport.Along along(Job job, AlongStatistics all, AlongMeasure measure) {
    return new JobReport.Along(
        measure.title(),
        new AlongStatement(measure, all.control(measure)).statement(),
        causes(job, measure.characteristic()::equals),
        AlongCharts.of(all, measure),
        all.settings(measure));
  }

  /** Of the radius; those along pieces stand beside their charts. */
  private List<JobReport.Cause> causes(Job job) {
    Set<String> along =
        Stream.of(AlongMeasure.values())
            .map(AlongMeasure::characteristic)
            .collect(Collectors.toSet());
    return causes(job, characteristic -> !along.contains(characteristic));
  }

  private List<JobReport.Cause> causes(Job job, Predicate<String> of) {
    return store.signalAnswers().ofJob(job.id(), 0).stream()
        .filter(each -> of.test(each.characteristic()))
        .map(each -> new JobReport.Cause(piece(each.readingId()), each))
        .toList();
  }

  private int piece(long readingId) {
    return store.readings().find(readingId).map(Reading::piece).orElse(0);
  }

  /** Whether the job is short enough to be split into parts. */
  private boolean splits(Job job) {
    return store.readings().countOfJob(job.id()) <= Monitor.MOST_IN_PARTS;
  }

  private static JobVerdict verdict(
      Job job, JobStatistics statistics, String first, @Nullable StudiedGauge studied) {
    return new JobVerdict(
        statistics.summary(first, Scope.PHASE),
        statistics.control(first),
        job.specification(),
        studied);
  }

  private static List<Summary> summaries(JobStatistics statistics, @Nullable StudiedGauge studied) {
    return statistics.characteristics().stream()
        .map(name -> StudiedGauges.told(statistics.summary(name, Scope.JOB), studied))
        .toList();
  }
}
