package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CsvSummary;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Orders from a file, each as a job like one that is there already. */
final class OrderRoutes {
  private final Store store;
  private final Stations stations;
  private final Clock clock;

  OrderRoutes(Store store, Stations stations, Clock clock) {
    this.store = store;
    this.stations = stations;
    this.clock = clock;
  }

  /** The file and the job that all else is taken from. */
  record ImportForm(
      @JsonPropertyDescription("section, faces, plan, station and what a row leaves out are of it")
          @Needed
          @Nullable Long likeJobId,
      @JsonPropertyDescription(
              "order, part, lot, target, tolerance, lower, upper, customer,"
                  + " drawing_revision; lengths in mm")
          @Needed
          @Nullable String csv,
      @JsonPropertyDescription("false or left out: only looked at") @Nullable Boolean create) {}

  /** A row of the file, and what is wrong with it. */
  record OrderView(
      long line,
      String name,
      String part,
      String materialLot,
      @Nullable Double targetMm,
      @Nullable Double lowerLimitMm,
      @Nullable Double upperLimitMm,
      @JsonPropertyDescription("empty: it can be made a job") Sentence fault,
      @JsonPropertyDescription(
              "other jobs or rows of the same name; looked for before jobs are made")
          Sentence notice) {
    OrderView with(Sentence told) {
      return new OrderView(
          line, name, part, materialLot, targetMm, lowerLimitMm, upperLimitMm, fault, told);
    }
  }

  /** What the file holds, and the jobs that were made of it. */
  record ImportView(List<OrderView> orders, List<Long> jobIds) {}

  /** A row with the job it would be. */
  private record Read(OrderView view, @Nullable Job job) {}

  List<Route> routes() {
    return List.of(
        Route.post(
                Right.JOB,
                "/api/orders",
                "Reads orders from CSV and makes jobs of them, all or none")
            .body(ImportForm.class)
            .answers(ImportView.class, this::read));
  }

  private ImportView read(Call call) {
    ImportForm form = call.body(ImportForm.class);
    Faults faults = new Faults();
    faults.needed("likeJobId", form.likeJobId(), "the number of a job");
    faults.needed("csv", form.csv(), "the text of the file");
    faults.refuse();
    long like = Objects.requireNonNull(form.likeJobId());
    Job model = store.jobs().find(like).orElseThrow(() -> Refusal.notFound("job", like));
    List<Read> read = new ArrayList<>();
    OrderFile.rows(Objects.requireNonNull(form.csv())).forEach(row -> read.add(read(row, model)));
    List<OrderView> views = read.stream().map(Read::view).toList();
    return Boolean.TRUE.equals(form.create())
        ? new ImportView(views, made(read, call.by()))
        : new ImportView(noticed(views), List.of());
  }

  /** A second job of a name may be a repeat order, or the same order again. */
  private List<OrderView> noticed(List<OrderView> views) {
    Namesakes others = new Namesakes(store.jobs());
    Map<String, Long> seen = new HashMap<>();
    List<OrderView> noticed = new ArrayList<>();
    for (OrderView each : views) {
      Sentence stored = each.name().isEmpty() ? Sentence.EMPTY : others.of(each.name(), 0);
      Long line = seen.putIfAbsent(each.name().toLowerCase(Locale.ROOT), each.line());
      Sentence above =
          line == null || each.name().isEmpty()
              ? Sentence.EMPTY
              : Sentence.of("Line %d has this name too.", line);
      noticed.add(each.with(Sentence.joined(" ", List.of(stored, above))));
    }
    return noticed;
  }

  /** None is made where one is at fault. */
  private List<Long> made(List<Read> read, String by) {
    List<Fault> faults =
        read.stream()
            .map(Read::view)
            .filter(view -> !view.fault().isEmpty())
            .map(OrderRoutes::fault)
            .toList();
    if (!faults.isEmpty()) {
      throw new BadInput(faults);
    }
    List<Job> jobs = read.stream().map(each -> Objects.requireNonNull(each.job())).toList();
    return store.jobs().addAll(jobs, by).stream().map(Job::id).toList();
  }

  private static Fault fault(OrderView view) {
    String line = "line " + view.line();
    return new Fault(line, view.name(), view.fault(), Sentence.plain("see the row"));
  }

  private Read read(TableFile.Row row, Job model) {
    try {
      Job job = job(row, model);
      new JobStation(stations.settings(), store.gauges(), null).refuseImpossible(job);
      JobDoubts.of(job).refuse();
      return new Read(view(row, job, Sentence.EMPTY), job);
    } catch (BadInput e) {
      List<Sentence> faults = e.faults().stream().map(OrderRoutes::ofColumn).toList();
      return new Read(view(row, null, Sentence.joined(". ", faults)), null);
    }
  }

  private static Sentence ofColumn(Fault fault) {
    String column = OrderFile.column(fault.field());
    return Sentence.of("%s %s; allowed: %s", column, fault.problem(), fault.allowed());
  }

  private Job job(TableFile.Row row, Job model) {
    String name = row.text("order");
    if (name == null) {
      throw new BadInput("order", "", "is missing", "the name of the order");
    }
    if (CsvSummary.isWord(name)) {
      throw new BadInput(
          "order", name, "seems to sum up the other rows", "rows of orders alone, or another name");
    }
    OrderDetails details =
        new OrderDetails(
            or(row.text("customer"), model.details().customer()),
            or(row.text("drawing_revision"), model.details().drawingRevision()),
            model.details().developedLengthMm(),
            model.details().developedAngleDegrees());
    String part = Objects.requireNonNullElse(row.text("part"), model.part());
    String lot = Objects.requireNonNullElse(row.text("lot"), "");
    return Job.opened(
        new Job.Order(name, part, lot, details),
        model.workplace(),
        new Job.Inspection(
            model.section(),
            model.measuredFace(),
            specification(row, model.specification()),
            model.plan()),
        Times.micros(Instant.now(clock)));
  }

  /** Of a row that names a target the limits are its own: both by a tolerance, or one by one. */
  private static Specification specification(TableFile.Row row, Specification model) {
    Double target = row.length("target");
    Double tolerance = row.length("tolerance");
    double middle = target == null ? model.targetMm() : target;
    if (tolerance != null) {
      refuseLimits(row);
      return new Specification(
          model.face(), middle, middle - tolerance, middle + tolerance, model.decideBy());
    }
    Double lower = row.length("lower");
    Double upper = row.length("upper");
    boolean own = target != null || lower != null || upper != null;
    return own ? new Specification(model.face(), middle, lower, upper, model.decideBy()) : model;
  }

  private static void refuseLimits(TableFile.Row row) {
    for (String limit : List.of("lower", "upper")) {
      String given = row.text(limit);
      if (given != null) {
        throw new BadInput(limit, given, "stands beside a tolerance", "one of the two");
      }
    }
  }

  private static @Nullable String or(@Nullable String told, @Nullable String otherwise) {
    return told == null ? otherwise : told;
  }

  private static OrderView view(TableFile.Row row, @Nullable Job job, Sentence fault) {
    Specification s = job == null ? null : job.specification();
    return new OrderView(
        row.line(),
        Objects.requireNonNullElse(row.text("order"), ""),
        job == null ? Objects.requireNonNullElse(row.text("part"), "") : job.part(),
        Objects.requireNonNullElse(row.text("lot"), ""),
        s == null ? null : s.targetMm(),
        s == null ? null : s.lowerLimitMm(),
        s == null ? null : s.upperLimitMm(),
        fault,
        Sentence.EMPTY);
  }
}
