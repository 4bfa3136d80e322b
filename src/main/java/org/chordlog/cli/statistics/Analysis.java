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
   * The phases that the file tells of, none where it tells of none, and the one that was asked for;
   * {@code mixed}: whether several places on a piece were taken together.
   */
  record Phases(List<String> inFile, @Nullable String chosen, boolean mixed) {
    Phases {
      inFile = List.copyOf(inFile);
    }

    boolean several() {
      return inFile.size() > 1;
    }

    private String newest() {
      return inFile.get(inFile.size() - 1);
    }

    /** Which readings of the job the figures are of; empty where that need not be said. */
    String scope() {
      if (chosen == null) {
        return several() ? ", whole job: phases %s to %s".formatted(inFile.get(0), newest()) : "";
      }
      return ", phase " + chosen + (chosen.equals(newest()) ? ", since the last change" : "");
    }
  }

  /**
   * Lines without a finite number where one is needed, lines that the file says don't count, and
   * lines that sum up others.
   */
  record LeftOut(List<Long> withoutNumber, List<Long> excluded, List<Long> summaries) {
    LeftOut {
      withoutNumber = List.copyOf(withoutNumber);
      excluded = List.copyOf(excluded);
      summaries = List.copyOf(summaries);
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
      CsvRows rows) {
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
        rows.leftOut(),
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
    return JsonText.of(json);
  }
}
