package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.store.Plant;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Tone;
import org.jspecify.annotations.Nullable;

/** A machine of a plant, with what there is to look at. */
record PlantMachine(
    @JsonPropertyDescription("the workshop computer whose machine it is") String edge,
    String site,
    String machine,
    @JsonPropertyDescription("what its pieces say, as on its own page") Statement statement,
    @JsonPropertyDescription("on its rollers; null where nothing is to be done")
        @Nullable Statement rollers,
    long pieces,
    @Nullable String lastReadingAt,
    @JsonPropertyDescription("that are not over, the most urgent first") List<AlertLine> alerts,
    @JsonPropertyDescription("open jobs to look at, the most pressing first") List<JobLine> jobs,
    @JsonPropertyDescription("the higher, the sooner somebody should look; 0: nothing to do")
        int urgency) {
  /** Alerts that wait come first, then what the pieces say, then the jobs. */
  private static final int OF_ALERT = 10_000;

  private static final int OF_PIECES = 1_000;

  static final Comparator<PlantMachine> BY_URGENCY =
      Comparator.comparingInt(PlantMachine::urgency)
          .reversed()
          .thenComparing(PlantMachine::site)
          .thenComparing(PlantMachine::edge)
          .thenComparing(PlantMachine::machine);

  /** An alert in short. */
  record AlertLine(
      long id,
      @JsonPropertyDescription("what is wrong, in a word or two") String word,
      @JsonPropertyDescription("how urgent it is, in a word or two") String urgency,
      Tone tone,
      @JsonPropertyDescription("whether it waits for somebody") boolean waits,
      @JsonPropertyDescription("its state in words") String stateWords) {
    static AlertLine of(Alert alert) {
      Statement said = new AlertStatement(alert).statement();
      return new AlertLine(
          alert.id(),
          said.word(),
          AlertWords.of(alert.kind().priority()),
          said.tone(),
          alert.state().waits(),
          AlertWords.of(alert.state()));
    }
  }

  /** A job that needs attention. */
  record JobLine(long id, String name, Tone tone, List<String> words) {
    private static final int PRESSING = 100;

    static JobLine of(String name, Attention found) {
      Tone tone = found.weight() >= PRESSING ? Tone.BAD : Tone.OPEN;
      return new JobLine(found.jobId(), name, tone, found.words());
    }
  }

  static PlantMachine of(
      Plant.Edge edge, MachineView view, List<Alert> alerts, List<Attention> jobs, Names names) {
    int ofAlerts = alerts.stream().mapToInt(PlantMachine::weight).max().orElse(0);
    int ofJobs = jobs.stream().mapToInt(Attention::weight).max().orElse(0);
    int ofPieces = view.pieces() == 0 || view.weight() == 1 ? 0 : view.weight();
    return new PlantMachine(
        edge.name(),
        edge.site(),
        view.machine(),
        view.statement(),
        view.rollers(),
        view.pieces(),
        view.lastReadingAt(),
        alerts.stream().map(AlertLine::of).toList(),
        jobs.stream().map(each -> JobLine.of(names.ofJob(each.jobId()), each)).toList(),
        OF_ALERT * ofAlerts + OF_PIECES * ofPieces + ofJobs);
  }

  /** What jobs are called. */
  interface Names {
    String ofJob(long id);
  }

  private static int weight(Alert alert) {
    return alert.state().waits() ? weight(alert.kind().priority()) : 0;
  }

  private static int weight(AlertPriority priority) {
    return switch (priority) {
      case HIGH -> 3;
      case MEDIUM -> 2;
      case LOW -> 1;
    };
  }
}
