package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.capability.Summary;
import org.chordlog.store.SealTip;
import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.RollerFigures;
import org.chordlog.verdict.Statement;

/** Everything a report shows; equal inputs give equal bytes. */
public record JobReport(
    Job job, Measured measured, Log log, Statistics statistics, Gauge gauge, Printing printing) {
  /**
   * {@code readings} are the newest of {@code count} in ascending order, {@code setUps} by id,
   * {@code decisions} judge them by the limits in force, by reading, and {@code tally} counts all.
   */
  public record Measured(
      List<Reading> readings,
      long count,
      List<Exclusion> exclusions,
      Map<Long, SetUp> setUps,
      Map<Long, Decision> decisions,
      ReadingCounts tally) {
    public Measured {
      readings = List.copyOf(readings);
      exclusions = List.copyOf(exclusions);
      setUps = Map.copyOf(setUps);
      decisions = Map.copyOf(decisions);
    }

    /** Those that are excluded from the statistics, each with the reason, by reading. */
    Map<Long, String> excluded() {
      Map<Long, String> reasons = new HashMap<>();
      for (Exclusion each : exclusions) {
        if (each.excluded()) {
          reasons.put(each.readingId(), each.reason());
        } else {
          reasons.remove(each.readingId());
        }
      }
      return reasons;
    }

    /** Those that count, ascending. */
    List<Reading> counting() {
      Set<Long> excluded = excluded().keySet();
      return readings.stream().filter(each -> !excluded.contains(each.id())).toList();
    }

    /** Of those that count. */
    public Optional<Reading> newest() {
      List<Reading> counting = counting();
      return counting.isEmpty() ? Optional.empty() : Optional.of(counting.get(counting.size() - 1));
    }
  }

  /**
   * What happened: events that were not taken back, causes found for signals of the radius,
   * revisions of the limits, lots in order, and the newest entry of the chain of hashes over all of
   * it.
   */
  public record Log(
      List<JobEvent> events,
      List<Cause> causes,
      List<SpecificationRevision> revisions,
      List<String> lots,
      SealTip seal) {
    public Log {
      events = List.copyOf(events);
      causes = List.copyOf(causes);
      revisions = List.copyOf(revisions);
      lots = List.copyOf(lots);
    }
  }

  /**
   * Figures of each characteristic over the whole job, the verdict since the last change, the first
   * characteristic lot by lot, and what pieces that ran through tell beside their radius.
   */
  public record Statistics(
      List<Summary> summaries,
      JobVerdict verdict,
      ChartSource charts,
      List<LotSummary> lots,
      PassSummary passes,
      Optional<OfLine> line) {
    public Statistics {
      summaries = List.copyOf(summaries);
      lots = List.copyOf(lots);
    }
  }

  /**
   * Which roller makes a ripple along the pieces, what is known of each roller, and how even pieces
   * are along their length.
   */
  public record OfLine(Statement rollers, List<RollerFigures> figures, List<Along> along) {
    public OfLine {
      figures = List.copyOf(figures);
      along = List.copyOf(along);
    }
  }

  /** The cause of a signal at a piece, as it was recorded. */
  public record Cause(int piece, SignalAnswer answer) {
    String words(ZoneId zone) {
      String action = answer.action().isEmpty() ? "" : "; " + answer.action();
      return "Cause of the signal at piece "
          + piece
          + ": "
          + answer.cause()
          + action
          + " ("
          + answer.by()
          + ", "
          + Print.time(answer.atMicros(), zone)
          + ").";
    }
  }

  /** A measure along pieces with its judgement, the causes found, its charts and their settings. */
  public record Along(
      String title, Statement statement, List<Cause> causes, ChartSource charts, String settings) {
    public Along {
      causes = List.copyOf(causes);
    }
  }

  /** The budget of the newest reading, and the newest checks of the gauge, the newest first. */
  public record Gauge(List<UncertaintyLine> uncertainty, List<InterimCheck> checks) {
    public Gauge {
      uncertainty = List.copyOf(uncertainty);
      checks = List.copyOf(checks);
    }
  }

  /**
   * When it is printed, in which time zone and unit of lengths, and whether the readings are
   * printed with it.
   */
  public record Printing(Instant madeAt, ZoneId zone, ViewUnit unit, boolean withReadings) {}

  public List<Reading> readings() {
    return measured.readings();
  }

  /** Readings of the job, those not printed too. */
  public long readingCount() {
    return measured.count();
  }

  List<JobEvent> events() {
    return log.events();
  }

  public List<Summary> summaries() {
    return statistics.summaries();
  }

  ZoneId zone() {
    return printing.zone();
  }

  PrintedLengths lengths() {
    return new PrintedLengths(printing.unit());
  }

  /** In the reader's unit. */
  ChartSource charts() {
    return printing.unit().of(statistics.charts());
  }

  /** The newest reading that counts. */
  Optional<Reading> newest() {
    return measured.newest();
  }

  /** What the newest reading that counts was computed from. */
  Optional<SetUp> newestSetUp() {
    return newest().map(each -> measured.setUps().get(each.setUpId()));
  }

  /** By the limits in force. */
  Decision decision(Reading reading) {
    return measured.decisions().getOrDefault(reading.id(), reading.decision());
  }

  /** Why a reading is excluded from the statistics; empty where it counts. */
  String exclusion(long readingId) {
    String reason = "";
    for (Exclusion exclusion : measured.exclusions()) {
      if (exclusion.readingId() == readingId) {
        reason = exclusion.excluded() ? exclusion.reason() : "";
      }
    }
    return reason;
  }
}
