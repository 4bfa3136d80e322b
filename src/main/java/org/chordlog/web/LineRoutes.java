package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Optional;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.profile.LivePiece;
import org.chordlog.radius.RadiusModel;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Pieces that run, or ran, through a gauge in a line: figures along them, and pictures. */
final class LineRoutes {
  private static final String RUNNING = "/api/stations/{station}/running";
  private static final String PROFILE = "/api/readings/{reading}/profile";
  private static final int USUAL_PIECES = 10;
  private static final int MOST_PIECES = 25;

  private final Store store;
  private final Stations stations;
  private final Pictures pictures;

  LineRoutes(Store store, Stations stations, Pictures pictures) {
    this.store = store;
    this.stations = stations;
    this.pictures = pictures;
  }

  /** What runs through a station now. */
  record RunningView(
      @JsonPropertyDescription("whether its pieces are measured as they run through")
          boolean inLine,
      @JsonPropertyDescription("whether a piece runs through now") boolean running,
      @JsonPropertyDescription("how far it has come") @Nullable Double placeMm,
      boolean stopped,
      boolean backwards,
      @JsonPropertyDescription("the link of the length; null without one of its own")
          StationView.@Nullable LengthView length) {
    static RunningView of(
        boolean inLine, @Nullable LivePiece piece, StationStatus.@Nullable LengthNow length) {
      return new RunningView(
          inLine,
          piece != null,
          piece == null ? null : piece.placeMm(),
          piece != null && piece.stopped(),
          piece != null && piece.backwards(),
          StationView.LengthView.of(length));
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(RUNNING, "The piece that runs through a station in a line now")
            .answers(RunningView.class, this::running),
        ChartOptions.asked(
                Route.get(RUNNING + "/chart", "Its profile so far; empty where none runs"))
            .answers(ChartRoutes.ChartView.class, this::runningChart),
        Route.get(PROFILE, "What was found along a piece that ran through")
            .answers(PieceOfLineView.class, call -> PieceOfLineView.of(piece(call))),
        ChartOptions.asked(Route.get(PROFILE + "/chart", "The radius along that piece"))
            .answers(ChartRoutes.ChartView.class, this::profileChart),
        ChartOptions.asked(
                Route.get("/api/jobs/{job}/profiles/chart", "The radius along the newest pieces"))
            .query("pieces", "integer", "1 to 25, 10 if left out")
            .answers(ChartRoutes.ChartView.class, this::profilesChart));
  }

  private RunningView running(Call call) {
    String station = call.name("station");
    boolean inLine = settings(station).filter(each -> each.feed() != null).isPresent();
    return RunningView.of(
        inLine, stations.runningPiece(station).orElse(null), stations.status(station).length());
  }

  private ChartRoutes.ChartView runningChart(Call call) {
    String station = call.name("station");
    LivePiece piece = stations.runningPiece(station).orElse(null);
    Job job =
        store
            .jobs()
            .activeOn(station)
            .orElseThrow(() -> Refusal.notFound("job at station", station));
    List<LineSnapshot.Spot> spots =
        piece == null ? List.of() : PieceOfLine.spots(piece.soFar(), model(job, station), 0);
    LineSnapshot.Trace trace = new LineSnapshot.Trace("the piece that runs", spots, List.of());
    return drawn(call, job, "running " + station, JobLine.of(List.of(trace), job));
  }

  private RadiusModel model(Job job, String station) {
    SetUp setUp =
        settings(station)
            .flatMap(each -> new CurrentSetUp(each, store.gauges()).of(job))
            .orElseThrow(() -> Refusal.notFound("bridge on station", station));
    return RadiusModel.of(setUp);
  }

  private Optional<StationSettings> settings(String station) {
    return stations.settings().stream().filter(each -> each.name().equals(station)).findFirst();
  }

  private PieceOfLine piece(Call call) {
    long id = call.id("reading");
    Reading reading = store.readings().find(id).orElseThrow(() -> Refusal.notFound("reading", id));
    return PieceOfLine.of(store, reading);
  }

  private ChartRoutes.ChartView profileChart(Call call) {
    PieceOfLine piece = piece(call);
    String of = "profile " + piece.reading().id();
    LineSnapshot snapshot = JobLine.of(List.of(piece.trace()), piece.job());
    return drawn(call, piece.job(), of, snapshot);
  }

  private ChartRoutes.ChartView profilesChart(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    int count = (int) call.query("pieces", USUAL_PIECES, 1, MOST_PIECES);
    LineSnapshot snapshot =
        new JobLine(store)
            .snapshot(job, count)
            .orElseThrow(() -> Refusal.notFound("piece that ran through in job", job.id()));
    return drawn(call, job, "profiles " + job.id(), snapshot);
  }

  private ChartRoutes.ChartView drawn(Call call, Job job, String of, LineSnapshot snapshot) {
    String tag = Integer.toHexString(snapshot.hashCode());
    call.unlessKnown(tag);
    ChartOptions look = ChartOptions.of(call);
    Pictures.Key key = new Pictures.Key(of, PictureKind.PROFILES, "", look, tag);
    ChartPicture picture =
        pictures.get(
            key,
            () ->
                PictureKind.PROFILES
                    .draw(look.unit().of(new PieceOfLine.Only(snapshot)))
                    .orElseThrow());
    return ChartRoutes.ChartView.of(job.id(), PictureKind.PROFILES, picture);
  }
}
