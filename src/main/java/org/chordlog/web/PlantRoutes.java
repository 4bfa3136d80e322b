package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Job;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant;
import org.chordlog.verdict.EdgeStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** All workshop computers of a plant: what they delivered, their machines, their jobs. */
final class PlantRoutes {
  private static final int MOST = 200;
  private final Plant plant;
  private final PlantRooms rooms;
  private final PlantWatch watch;
  private final Clock clock;

  PlantRoutes(Plant plant, PlantRooms rooms, PlantWatch watch, Clock clock) {
    this.plant = plant;
    this.rooms = rooms;
    this.watch = watch;
    this.clock = clock;
  }

  /** The whole plant. */
  record PlantView(
      @JsonPropertyDescription("by site and name") List<EdgeView> edges,
      @JsonPropertyDescription("of all of them, those that need somebody first")
          List<PlantMachine> machines) {}

  /** A workshop computer and what it delivered; times are the plant's unless they say otherwise. */
  record EdgeView(
      String name,
      String site,
      EdgeStatement.Delivery delivery,
      @JsonPropertyDescription("the same in words") Statement statement,
      @JsonPropertyDescription("on its clock and its history; empty for nothing")
          List<Statement> remarks,
      @JsonPropertyDescription("everything up to it is here; null before the first delivery")
          @Nullable Long lastReadingId,
      @Nullable String receivedAt,
      @JsonPropertyDescription("when it last spoke") @Nullable String seenAt,
      @JsonPropertyDescription("of its newest record, by its own clock") @Nullable String newestAt,
      @JsonPropertyDescription("records that were not here yet when it last spoke")
          long backlogRows,
      String program,
      int schema,
      @JsonPropertyDescription("how often its records began anew, from 1") int incarnation,
      @JsonPropertyDescription("false until its machines were looked at") boolean looked,
      int machines,
      @JsonPropertyDescription("alerts that wait for somebody") int waiting,
      @JsonPropertyDescription("alerts about none of its machines")
          List<PlantMachine.AlertLine> alerts,
      @JsonPropertyDescription("the plant's own alerts about it")
          List<PlantMachine.AlertLine> ofPlant) {}

  /** A job with where it is. */
  record PlantJob(String edge, String site, JobView job) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/plant", "Workshop computers and machines of the plant")
            .answers(PlantView.class, this::view),
        Route.get("/api/plant/jobs", "Jobs of all workshop computers, the newest first")
            .query("text", "string", "in name, part or lot")
            .query("state", "string", Call.names(Job.State.class))
            .query("edge", "string", "only of that workshop computer")
            .query("limit", "integer", "1 to " + MOST + ", 50 if left out")
            .answersList(PlantJob.class, this::jobs));
  }

  /** Paths as those of the service of one workshop computer. */
  List<Route> below() {
    return List.of(
        Route.get("/api/edge", "The workshop computer, and what it delivered")
            .answers(
                EdgeView.class,
                call -> edge(rooms.edge(EdgeRoutes.name(call.ctx())), ownAlerts())));
  }

  private PlantView view(Call call) {
    List<Plant.Edge> edges = rooms.edges();
    List<Alert> own = ownAlerts();
    PlantView view =
        new PlantView(
            edges.stream().map(each -> edge(each, own)).toList(),
            edges.stream()
                .flatMap(each -> watch.of(each).stream())
                .flatMap(each -> each.machines().stream())
                .sorted(PlantMachine.BY_URGENCY)
                .toList());
    call.unlessKnown(Integer.toHexString(view.hashCode()));
    return view;
  }

  private List<Alert> ownAlerts() {
    return plant.own().alerts().open();
  }

  private EdgeView edge(Plant.Edge edge, List<Alert> own) {
    Plant.Delivered delivered = edge.delivered();
    EdgeStatement said = statement(edge);
    EdgeSummary summary = watch.of(edge).orElse(null);
    return new EdgeView(
        edge.name(),
        edge.site(),
        said.delivery(),
        said.statement(),
        remarks(edge, said),
        delivered == null ? null : (Long) delivered.lastReadingId(),
        delivered == null ? null : Times.iso(delivered.receivedMicros()),
        delivered == null ? null : Times.iso(delivered.seenMicros()),
        delivered == null || delivered.newestEdgeMicros() == 0
            ? null
            : Times.iso(delivered.newestEdgeMicros()),
        delivered == null ? 0 : delivered.backlogRows(),
        edge.versions().program(),
        edge.versions().schema(),
        edge.incarnation(),
        summary != null,
        summary == null ? 0 : summary.machines().size(),
        summary == null ? 0 : summary.waiting(),
        summary == null ? List.of() : summary.alerts(),
        own.stream()
            .filter(each -> each.subject().equals(AlertSubject.edge(edge.name())))
            .map(PlantMachine.AlertLine::of)
            .toList());
  }

  private static List<Statement> remarks(Plant.Edge edge, EdgeStatement said) {
    return Stream.concat(
            said.clock().stream(),
            edge.formerly().stream()
                .map(each -> EdgeStatement.began(each.endedAfterReadingId(), each.why())))
        .toList();
  }

  /** In words, as of now. */
  EdgeStatement statement(Plant.Edge edge) {
    Plant.Delivered delivered = edge.delivered();
    long now = Times.micros(Instant.now(clock));
    return new EdgeStatement(
        edge.name(),
        delivery(edge.state()),
        delivered == null ? 0 : delivered.lastReadingId(),
        delivered == null ? 0 : delivered.backlogRows(),
        delivered == null ? 0 : Math.max(0, (now - delivered.seenMicros()) / 1_000_000),
        edge.trouble(),
        delivered == null ? 0 : delivered.clockAheadMicros() / 1_000);
  }

  private static EdgeStatement.Delivery delivery(Plant.State state) {
    return switch (state) {
      case NEW -> EdgeStatement.Delivery.NOTHING_YET;
      case COMPLETE -> EdgeStatement.Delivery.COMPLETE;
      case BEHIND -> EdgeStatement.Delivery.BEHIND;
      case SILENT -> EdgeStatement.Delivery.SILENT;
    };
  }

  private List<PlantJob> jobs(Call call) {
    int limit = (int) call.query("limit", 50, 1, MOST);
    JobQuery query =
        JobQuery.of(JobQuery.Order.NEWEST, limit)
            .in(call.choice("state", Job.State.class).orElse(null))
            .containing(call.ctx().queryParam("text"));
    String only = call.text("edge", "");
    Map<String, Plant.Edge> edges =
        rooms.edges().stream().collect(Collectors.toMap(Plant.Edge::id, each -> each));
    return plant.jobs(query.filter(), only.isEmpty() ? null : rooms.edge(only).id(), limit).stream()
        .flatMap(found -> view(found, edges.get(found.edgeId())).stream())
        .toList();
  }

  /** Empty for a computer that has just come. */
  private static Optional<PlantJob> view(Plant.FoundJob found, Plant.@Nullable Edge edge) {
    JobView job = JobView.of(found.job(), found.lot(), found.active(), found.readings());
    return Optional.ofNullable(edge).map(of -> new PlantJob(of.name(), of.site(), job));
  }
}
