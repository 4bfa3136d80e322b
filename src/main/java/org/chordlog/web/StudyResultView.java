package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Sentence;
import org.chordlog.store.Store;
import org.chordlog.study.AnovaRow;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyTest;
import org.chordlog.study.StudyVerdict;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** What a study found: each figure with its interval, and what was measured. */
record StudyResultView(
    String design,
    StudyVerdict verdict,
    Sentence says,
    List<StudyFigure> figures,
    @JsonPropertyDescription("names of the figures that are read first") List<String> mainFigures,
    List<StudyResult.Alternative> alternatives,
    List<AnovaRow> analysisOfVariance,
    List<StudyTest> tests,
    @JsonPropertyDescription(
            "against what the readings' own budget states; null where the study has"
                + " no such figure")
        @Nullable BudgetComparison budget,
    @JsonPropertyDescription(
            "capability of the measuring process, where a study on a master of the same gauge is"
                + " done too; null if not")
        StudiedProcess.@Nullable ProcessView process,
    List<String> cautions,
    @JsonPropertyDescription("the study to plan in its place, since parts move; null if none")
        GaugeStudy.@Nullable Kind instead,
    List<Measured> measurements) {
  /** A measurement that counts. */
  record Measured(
      long id,
      int step,
      String part,
      String place,
      String operator,
      int repeat,
      double radiusMm,
      double depthMm,
      String takenAt) {
    static Measured of(StudyEvaluation.Taken taken) {
      return new Measured(
          taken.measurement().id(),
          taken.measurement().step(),
          taken.step().part(),
          taken.step().place(),
          taken.step().operator(),
          taken.step().repeat(),
          1 / taken.measurement().result().curvaturePerMm(),
          taken.measurement().depthNm() / 1e6,
          Times.iso(taken.measurement().captured().wallMicros()));
    }
  }

  static StudyResultView of(Store store, GaugeStudy study) {
    StudyEvaluation evaluation = new StudyEvaluation(store, study);
    StudyResult result = evaluation.result();
    return new StudyResultView(
        result.design(),
        result.conclusion().verdict(),
        result.conclusion().says(),
        result.figures(),
        result.mainFigures().stream().map(StudyFigure::name).toList(),
        result.alternatives(),
        result.anova(),
        result.tests(),
        evaluation.budget(result).orElse(null),
        StudiedProcess.of(store, evaluation).orElse(null),
        result.cautions(),
        result.partsMove() ? GaugeStudy.Kind.NESTED : null,
        evaluation.taken().stream().map(Measured::of).toList());
  }
}
