package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.PieceGap;
import org.chordlog.stats.capability.Figure;
import org.chordlog.store.Store;
import org.chordlog.verdict.CapabilityVerdict;
import org.chordlog.verdict.GapWords;
import org.chordlog.verdict.StudiedGauge;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** A job by its material lots and by the passes of its pieces. */
final class PartRoutes {
  private final Store store;
  private final Monitor monitor;
  private final StudiedGauges studies;

  PartRoutes(Store store, Monitor monitor) {
    this.store = store;
    this.monitor = monitor;
    studies = new StudiedGauges(store);
  }

  /** The lots of a job in the order of their first readings. */
  record LotsView(long jobId, String characteristic, List<LotView> lots) {}

  /** One lot; {@code index} is the one that applies to its readings, null where there is none. */
  record LotView(
      @JsonPropertyDescription("empty: none was named") String lot,
      long firstReadingId,
      long lastReadingId,
      int pieces,
      long readings,
      @Nullable FigureView index,
      List<FigureView> figures) {
    static LotView of(LotSummary lot) {
      @Nullable Figure index = new CapabilityVerdict(lot.summary(), true).index().orElse(null);
      return new LotView(
          lot.lot(),
          lot.firstReadingId(),
          lot.lastReadingId(),
          lot.pieces(),
          lot.summary().count(),
          index == null ? null : FigureView.of(index),
          lot.summary().figures().stream().map(FigureView::of).toList());
    }
  }

  /** Passes of a job's pieces. */
  record PassesView(
      long jobId,
      int pieces,
      @JsonPropertyDescription("of a piece") double meanPasses,
      @JsonPropertyDescription("pieces that took more than one pass") int rolledAgain,
      @JsonPropertyDescription("their part of all pieces, 0 to 1") double shareRolledAgain,
      @JsonPropertyDescription("what each pass after the first did to the radius")
          List<PassSummary.Pass> passes) {
    static PassesView of(long jobId, PassSummary summary) {
      return new PassesView(
          jobId,
          summary.pieces(),
          summary.meanPasses(),
          summary.rolledAgain(),
          summary.shareRolledAgain(),
          summary.passes());
    }
  }

  /** What does not count in a job's figures, and what was not measured, in sentences. */
  record LeftOutView(
      long jobId,
      @JsonPropertyDescription("of the whole job") long excludedReadings,
      @JsonPropertyDescription("pieces that lack a planned position; not the newest of an open job")
          int incompletePieces,
      @JsonPropertyDescription("empty: nothing is left out") List<String> words) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/lots", "Figures of a job lot by lot")
            .query(
                "characteristic", "string", "a position, or the whole piece; the first if left out")
            .answers(LotsView.class, this::lots),
        Route.get("/api/jobs/{job}/passes", "How often pieces were rolled, and what each pass did")
            .answers(PassesView.class, this::passes),
        Route.get("/api/jobs/{job}/left-out", "Excluded readings, and positions not measured")
            .answers(LeftOutView.class, this::leftOut));
  }

  private LotsView lots(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    StudiedGauge studied = studies.of(job).orElse(null);
    String study = "-" + (studied == null ? 0 : studied.hashCode());
    call.unlessKnown(monitor.standing(job.id()).tag() + study);
    String characteristic =
        monitor.read(job.id(), running -> StatisticsRoutes.characteristic(running, call));
    return new LotsView(
        job.id(),
        characteristic,
        monitor.lots(job.id(), characteristic).stream()
            .map(lot -> StudiedGauges.told(lot, studied))
            .map(LotView::of)
            .toList());
  }

  private LeftOutView leftOut(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    call.unlessKnown(monitor.standing(job.id()).tag() + "-" + JobVersion.of(job));
    List<PieceGap> gaps = monitor.gaps(job);
    long excluded = monitor.excluded(job.id());
    String ofReadings =
        GapWords.excluded(excluded, store.readings().countOfJob(job.id())) + " of this job.";
    List<String> words =
        Stream.of(GapWords.of(gaps), excluded == 0 ? "" : ofReadings)
            .filter(each -> !each.isEmpty())
            .toList();
    return new LeftOutView(job.id(), excluded, gaps.size(), words);
  }

  private PassesView passes(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    call.unlessKnown(monitor.standing(job.id()).tag());
    return PassesView.of(job.id(), monitor.passes(job.id()));
  }
}
