package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.verdict.StudyWords;

/** A kind of study, and what has to be named to plan one. */
record StudyKindView(
    Kind kind,
    String words,
    @JsonPropertyDescription("what it is for, and what it takes") String purpose,
    @JsonPropertyDescription("what its parts are called") String partsAre,
    @JsonPropertyDescription("parts are named; else they are the masters") boolean namesParts,
    @JsonPropertyDescription("parts are shared among the operators") boolean ownParts,
    boolean namesPlaces,
    boolean onMasters,
    @JsonPropertyDescription("three masters or more, not one") boolean severalMasters,
    boolean severalOperators,
    boolean needsJob) {
  static List<StudyKindView> all() {
    return Arrays.stream(Kind.values()).map(StudyKindView::of).toList();
  }

  static StudyKindView of(GaugeStudy.Kind kind) {
    return new StudyKindView(
        kind,
        StudyWords.of(kind),
        StudyWords.purpose(kind),
        StudyWords.parts(kind),
        !kind.onMasterEach(),
        kind.ownParts(),
        kind == Kind.SPLIT,
        kind.onMasters(),
        kind == Kind.LINEARITY,
        kind.severalOperators(),
        !kind.onMasters() || kind == Kind.TYPE1);
  }
}
