package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.store.Store;
import org.chordlog.study.StudyDesign.Step;
import org.chordlog.verdict.StudyWords;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A study and how far it is; no value that was measured. */
record StudyView(
    long id,
    String station,
    String name,
    GaugeStudy.Kind kind,
    @JsonPropertyDescription("what its parts are called") String partsAre,
    boolean onMasters,
    GaugeStudy.State state,
    List<String> parts,
    List<String> places,
    List<String> operators,
    int repeats,
    @JsonPropertyDescription("start of the drawn order") long seed,
    double nominalMm,
    @Nullable Double lowerLimitMm,
    @Nullable Double upperLimitMm,
    int steps,
    int measured,
    @JsonPropertyDescription("what to measure next; null when everything is measured")
        @Nullable NextStep next,
    @JsonPropertyDescription("id of the newest measurement that counts; null if none")
        @Nullable Long lastMeasurementId,
    String plannedAt,
    String plannedBy) {
  /** What to do next and how, and for how many steps more the same person goes on. */
  record NextStep(
      int step,
      String operator,
      String part,
      String place,
      int repeat,
      int leftForOperator,
      @JsonPropertyDescription("part and place in words") String where,
      @JsonPropertyDescription("how the measurement is taken") String handling,
      @JsonPropertyDescription("it is refused before, since another day begins; null: take it now")
          @Nullable String notBefore) {}

  static StudyView of(GaugeStudy study, Store store) {
    List<StudyMeasurement> counted = store.studies().counted(study.id());
    GaugeStudy.Design design = study.design();
    return new StudyView(
        study.id(),
        study.station(),
        study.name(),
        design.kind(),
        StudyWords.parts(design.kind()),
        design.kind().onMasters(),
        study.state(),
        design.parts(),
        design.places(),
        design.operators(),
        design.repeats(),
        design.seed(),
        study.subject().specification().targetMm(),
        study.subject().specification().lowerLimitMm(),
        study.subject().specification().upperLimitMm(),
        design.steps(),
        counted.size(),
        next(study, counted),
        counted.stream().map(StudyMeasurement::id).max(Long::compare).orElse(null),
        Times.iso(study.made().atMicros()),
        study.made().by());
  }

  private static @Nullable NextStep next(GaugeStudy study, List<StudyMeasurement> counted) {
    Set<Integer> measured = new HashSet<>();
    counted.forEach(each -> measured.add(each.step()));
    List<Step> open =
        StudyEvaluation.steps(study).stream()
            .filter(each -> !measured.contains((int) each.order()))
            .toList();
    if (open.isEmpty()) {
      return null;
    }
    Step step = open.get(0);
    int left =
        IntStream.range(0, open.size())
            .filter(i -> !open.get(i).operator().equals(step.operator()))
            .findFirst()
            .orElse(open.size());
    return new NextStep(
        (int) step.order(),
        step.operator(),
        step.part(),
        step.place(),
        step.repeat(),
        left,
        where(study.design().kind(), step),
        StudyWords.handling(study.design().kind(), step.place()),
        notBefore(study.design(), step, counted));
  }

  private static String where(GaugeStudy.Kind kind, Step step) {
    String part = StudyWords.part(kind, step.part());
    return step.place().isEmpty() ? part : part + ", " + step.place();
  }

  private static @Nullable String notBefore(
      GaugeStudy.Design design, Step step, List<StudyMeasurement> counted) {
    if (!design.beginsDay((int) step.order())) {
      return null;
    }
    return counted.stream()
        .filter(each -> each.step() == step.order() - 1)
        .map(each -> Times.iso(each.captured().wallMicros() + GaugeStudy.NEXT_DAY_MICROS))
        .findFirst()
        .orElse(null);
  }
}
