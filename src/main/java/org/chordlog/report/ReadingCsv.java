package org.chordlog.report;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.store.MaterialLots;
import org.chordlog.store.Phases;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * Readings as CSV (RFC 4180), one a line, with everything that their radii were computed from: the
 * set-up as JSON; columns that came later stand behind it. Lengths are given in nanometres where
 * they are stored so, and as doubles that read back bit for bit elsewhere.
 */
public final class ReadingCsv {
  private static final int PAGE = 1_000;
  private static final String[] HEADER = {
    "id",
    "station",
    "station_sequence",
    "job_id",
    "job",
    "part",
    "machine",
    "material_lot",
    "piece",
    "pass",
    "position",
    "time_utc",
    "wall_micros",
    "monotonic_nanos",
    "clock",
    "mode",
    "value_nm",
    "scatter_nm",
    "sample_count",
    "first_sample",
    "last_sample",
    "depth_nm",
    "depth_mm",
    "radius_mm",
    "lower_mm",
    "upper_mm",
    "curvature_per_mm",
    "standard_uncertainty_per_mm",
    "coverage_factor",
    "degrees_of_freedom",
    "decision",
    "limits_revision",
    "measured_by",
    "marks",
    "excluded_reason",
    "raw_hex",
    "set_up_id",
    "set_up",
    "phase"
  };

  private final Store store;
  private final DecimalMark mark;
  private final Map<Long, MaterialLots> lots = new HashMap<>();
  private final Map<Long, Phases> phases = new HashMap<>();
  private final Map<Long, @Nullable Job> jobs = new HashMap<>();
  private final Map<Long, Map<Long, Exclusion>> exclusions = new HashMap<>();
  private final Map<Long, String> setUps = new HashMap<>();

  /** With decimal points. */
  public ReadingCsv(Store store) {
    this(store, DecimalMark.POINT);
  }

  public ReadingCsv(Store store, DecimalMark mark) {
    this.store = store;
    this.mark = mark;
  }

  /** Writes the readings of a job, or with a null id of all jobs; pages by key. How many. */
  public long write(@Nullable Long jobId, Appendable out) throws IOException {
    CSVPrinter printer = new CSVPrinter(out, mark.format());
    printer.printRecord((Object[]) HEADER);
    long afterId = 0;
    long count = 0;
    List<Reading> page;
    do {
      page = page(jobId, afterId);
      for (Reading reading : page) {
        print(printer, reading);
        afterId = reading.id();
      }
      count += page.size();
    } while (page.size() == PAGE);
    return count;
  }

  /**
   * The same, and as the last line a comment with the {@link CsvSeal}. {@link BadInput} with
   * decimal commas: what is sealed is one form, which is compared with what is stored.
   */
  public long writeSealed(@Nullable Long jobId, Appendable out) throws IOException {
    if (mark != DecimalMark.POINT) {
      throw new BadInput("seal", true, "is for files with decimal points", "a file without it");
    }
    CsvSeal.Sum sum = new CsvSeal.Sum(out);
    long count = write(jobId, sum);
    out.append(CsvSeal.of(store.seal(), sum.text()).line());
    return count;
  }

  private List<Reading> page(@Nullable Long jobId, long afterId) {
    return jobId == null
        ? store.readings().all(afterId, PAGE)
        : store.readings().ofJob(jobId, afterId, PAGE);
  }

  private void print(CSVPrinter to, Reading reading) throws IOException {
    print(to, identity(reading));
    print(to, captured(reading));
    print(to, radius(reading));
    print(to, new Object[] {phase(reading)});
    to.println();
  }

  private void print(CSVPrinter to, @Nullable Object[] cells) throws IOException {
    for (Object cell : cells) {
      to.print(mark.cell(cell));
    }
  }

  /** Empty where the job can't be read. */
  private Object phase(Reading reading) {
    Job job = job(reading);
    return job == null
        ? ""
        : phases.computeIfAbsent(job.id(), any -> Phases.of(store.jobs(), job)).of(reading);
  }

  private @Nullable Job job(Reading reading) {
    return jobs.computeIfAbsent(reading.jobId(), id -> store.jobs().readable(id).orElse(null));
  }

  private Object[] identity(Reading reading) {
    Job job = job(reading);
    return new Object[] {
      reading.id(),
      reading.station(),
      reading.stationSequence(),
      reading.jobId(),
      job == null ? "" : job.name(),
      job == null ? "" : job.part(),
      job == null ? "" : job.machine(),
      lot(reading, job),
      reading.piece(),
      reading.circumstances().pass(),
      reading.position()
    };
  }

  private String lot(Reading reading, @Nullable Job job) {
    return job == null
        ? Objects.requireNonNullElse(reading.circumstances().materialLot(), "")
        : lots.computeIfAbsent(job.id(), any -> MaterialLots.of(store.jobs(), job)).of(reading);
  }

  private static Object[] captured(Reading reading) {
    var captured = reading.captured();
    return new Object[] {
      UtcTime.text(captured.wallMicros()),
      captured.wallMicros(),
      captured.monotonicNanos(),
      reading.clock(),
      captured.mode(),
      captured.valueNm(),
      captured.scatterNm(),
      captured.sampleCount(),
      captured.firstSequence(),
      captured.lastSequence(),
      reading.depthNm(),
      Length.mm(reading.depthNm())
    };
  }

  private @Nullable Object[] radius(Reading reading) {
    var radius = reading.radius();
    return new @Nullable Object[] {
      radius.radiusMm(),
      radius.lowerMm(),
      radius.upperMm(),
      radius.curvaturePerMm(),
      radius.standardUncertaintyPerMm(),
      radius.coverageFactor(),
      radius.degreesOfFreedom(),
      reading.decision(),
      reading.circumstances().revision(),
      reading.circumstances().measuredBy(),
      reading.marks().stream().sorted().map(Mark::name).collect(Collectors.joining(" ")),
      exclusion(reading),
      reading.rawHex(),
      reading.setUpId(),
      setUps.computeIfAbsent(reading.setUpId(), id -> store.readings().setUpText(id).orElse(""))
    };
  }

  /** Why it is excluded from the statistics; empty where it counts. */
  private String exclusion(Reading reading) {
    Exclusion newest = exclusions.computeIfAbsent(reading.jobId(), this::newest).get(reading.id());
    return newest == null || !newest.excluded() ? "" : newest.reason();
  }

  private Map<Long, Exclusion> newest(long jobId) {
    Map<Long, Exclusion> byReading = new HashMap<>();
    store
        .readings()
        .exclusionsOfJob(jobId)
        .forEach(exclusion -> byReading.put(exclusion.readingId(), exclusion));
    return byReading;
  }
}
