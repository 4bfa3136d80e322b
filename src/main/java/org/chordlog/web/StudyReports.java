package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.report.StudyReport;
import org.chordlog.store.Store;
import org.chordlog.study.StudyResult;
import org.chordlog.web.StudyEvaluation.Taken;

/** Gathers the report of a study from the store. */
public final class StudyReports {
  private final Store store;

  public StudyReports(Store store) {
    this.store = store;
  }

  /** Throws {@link BadInput} for an unknown study, and while measurements are missing. */
  public StudyReport of(long id, StudyReport.Printing printing) {
    GaugeStudy study =
        store
            .studies()
            .find(id)
            .orElseThrow(
                () -> new BadInput("study", id, "does not exist", "the number of a study"));
    StudyEvaluation evaluation = new StudyEvaluation(store, study);
    StudyResult result = evaluation.result();
    return new StudyReport(
        study,
        new StudyReport.Found(result, evaluation.budget(result).orElse(null)),
        measured(evaluation),
        StudyCharts.of(evaluation, result),
        printing);
  }

  private static StudyReport.Measured measured(StudyEvaluation evaluation) {
    List<Long> times =
        evaluation.taken().stream()
            .map(Taken::measurement)
            .map(each -> each.captured().wallMicros())
            .sorted()
            .toList();
    return new StudyReport.Measured(
        evaluation.setUp().orElseThrow(), times.get(0), times.get(times.size() - 1));
  }
}
