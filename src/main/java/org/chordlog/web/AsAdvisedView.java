package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.correction.AsAdvised;
import org.jspecify.annotations.Nullable;

/** The newest pieces of a job as they were bent, and as advised. */
record AsAdvisedView(
    @JsonPropertyDescription("so many of the job are remembered with their advice") int pieces,
    @JsonPropertyDescription("null where nothing can be compared") @Nullable Compared compared) {
  /** The same pieces twice. */
  record Compared(
      @JsonPropertyDescription("so many, the newest") int pieces,
      @JsonPropertyDescription("as measured") Course bent,
      @JsonPropertyDescription("computed from the same pieces, each advice followed")
          Course advised,
      @JsonPropertyDescription(
              "expanded uncertainty (k = 2) of what one unit of the scale does, in parts of it")
          double gainUncertainty,
      @JsonPropertyDescription("as advised, if one unit did less by that") Course less,
      @JsonPropertyDescription("as advised, if one unit did more by that") Course more) {}

  /** How they came out. */
  record Course(
      @JsonPropertyDescription("deviation from the target, mm") double rootMeanSquareMm,
      @JsonPropertyDescription("pieces out of tolerance") int out,
      int corrections) {
    static Course of(AsAdvised.Course course) {
      return new Course(course.rootMeanSquareMm(), course.out(), course.corrections());
    }
  }

  static AsAdvisedView of(int pieces, @Nullable AsAdvised found) {
    return new AsAdvisedView(pieces, found == null ? null : compared(found));
  }

  private static Compared compared(AsAdvised found) {
    return new Compared(
        found.pieces(),
        Course.of(found.bent()),
        Course.of(found.advised()),
        found.doubt().relative(),
        Course.of(found.doubt().less()),
        Course.of(found.doubt().more()));
  }
}
