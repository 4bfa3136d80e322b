package org.chordlog.cli.statistics;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.Lengths;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.PositionEffect;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.Spell;
import org.chordlog.stats.drift.MachineVerdict;
import org.jspecify.annotations.Nullable;

/**
 * What {@code analyse} found; {@code trendBase} is what the trend is relative to, null where each
 * reading has a nominal of its own; {@code notes} say how the file was read.
 */
record Analysis(
    String column,
    List<Part> parts,
    List<PositionEffect> positionEffects,
    String settings,
    @Nullable Double trendBase,
    MachineVerdict trend,
    List<Lot> lots,
    Phases phases,
    LeftOut leftOut,
    List<String> notes) {
  /**
   * The phases that the file tells of, none where it tells of none, those with readings that were
   * taken, the newest, and the one that was asked for; {@code ofJob}: whether a job counts them
   * from 1, and none was passed over.
   */
  record Phases(
      List<String> inFile,
      List<String> taken,
      String newest,
      @Nullable String chosen,
      boolean ofJob) {
    private static final int LISTED = 6;

    Phases {
      inFile = List.copyOf(inFile);
      taken = List.copyOf(taken);
    }

    boolean several() {
      return taken.size() > 1;
    }

    /** Which readings of the job the figures are of; empty where that need not be said. */
    String scope() {
      if (chosen == null) {
        return several() ? all() : "";
      }
      return ", phase " + chosen + (chosen.equals(newest) ? ", since the last change" : "");
    }

    private String all() {
      int count = taken.size();
      String last = taken.get(count - 1);
      if (ofJob && last.equals(String.valueOf(count))) {
        return ", whole job: phases 1 to " + last;
      }
      return ", phases "
          + (count <= LISTED
              ? String.join(", ", taken)
              : String.join(", ", taken.subList(0, LISTED)) + " … (" + count + ")");
    }
  }

  /**
   * Lines without a finite number where one is needed, lines that the file says don't count, lines
   * that sum up others, lines that repeat the heading, and lines that repeat other rows.
   */
  record LeftOut(
      List<Long> withoutNumber,
      List<Long> excluded,
      List<Long> summaries,
      List<Long> headings,
      List<Long> again) {
    LeftOut {
      withoutNumber = List.copyOf(withoutNumber);
      excluded = List.copyOf(excluded);
      summaries = List.copyOf(summaries);
      headings = List.copyOf(headings);
      again = List.copyOf(again);
    }
  }

  /** The figures of one material lot. */
  record Lot(String lot, Summary summary) {}

  /**
   * A spell within the file that a steady process of its length gives in less than 1 % of files.
   */
  static final double BEYOND_CHANCE = 0.01;

  /** One characteristic: all readings, a position, or the whole piece. */
  record Part(Summary summary, ControlVerdict control, List<ChartSnapshot> charts) {
    static Part of(JobStatistics job, String name) {
      return new Part(
          job.summary(name, Scope.JOB),
          job.control(name),
          job.kinds(name).stream().map(kind -> job.chart(name, kind)).toList());
    }

    boolean fault() {
      return control.notInControl()
          || control.history().stream().anyMatch(Part::beyondChance)
          || beyond("observedBelowPpm")
          || beyond("observedAbovePpm");
    }

    private static boolean beyondChance(Spell spell) {
      return spell.chance() < BEYOND_CHANCE;
    }

    private boolean beyond(String figure) {
      Optional<Double> ppm = summary.figure(figure).map(found -> found.value());
      return ppm.filter(value -> value > 0).isPresent();
    }

    private Map<String, Object> json() {
      Map<String, Object> json = new LinkedHashMap<>();
      json.put("characteristic", summary.characteristic());
      json.put("count", summary.count());
      json.put("figures", summary.figures());
      json.put("cautions", summary.cautions());
      json.put("control", ControlText.json(control));
      json.put("charts", charts.stream().map(ChartJson::of).toList());
      return json;
    }
  }

  static Analysis of(
      String column,
      JobStatistics job,
      @Nullable Double trendBase,
      MachineVerdict trend,
      List<Lot> lots,
      CsvRows rows,
      List<Long> again) {
    List<Part> parts = job.characteristics().stream().map(name -> Part.of(job, name)).toList();
    return new Analysis(
        column,
        parts,
        job.positionEffects(),
        job.plan().charts().sentence(),
        trendBase,
        trend,
        lots,
        rows.phases(),
        rows.leftOut(again),
        rows.notes());
  }

  /** Not in control, at the end or clearly so before, or a value beyond a specification limit. */
  boolean fault() {
    return parts.stream().anyMatch(Part::fault);
  }

  static List<ChartPoint> signals(ChartSnapshot chart) {
    return chart.points().stream().filter(point -> !point.signals().isEmpty()).toList();
  }

  /** For people; {@code lengths} null: with as many digits as there are. */
  String text(@Nullable Lengths lengths) {
    return new AnalysisText(this, lengths).toString();
  }

  String json() {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("column", column);
    json.put("phases", phases.inFile());
    json.put("phase", phases.chosen());
    json.put("rowsLeftOut", leftOut.withoutNumber());
    json.put("rowsExcluded", leftOut.excluded());
    json.put("characteristics", parts.stream().map(Part::json).toList());
    json.put("positionEffects", positionEffects);
    json.put("lots", lots);
    json.put("chartSettings", settings);
    json.put("trendRelativeTo", trendBase);
    json.put("trend", trend);
    json.put("rowsSummingUp", leftOut.summaries());
    json.put("notes", notes);
    json.put("headingsAgain", leftOut.headings());
    json.put("rowsAgain", leftOut.again());
    return JsonText.of(json);
  }
}
