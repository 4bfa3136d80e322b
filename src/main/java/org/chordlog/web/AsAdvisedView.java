package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.correction.AsAdvised;
import org.jspecify.annotations.Nullable;

/** The newest pieces of a job as they were bent, and as advised. */
record AsAdvisedView(
    @JsonPropertyDescription("so many of the job are remembered with their advice") int pieces,
    @JsonPropertyDescription("as measured; null where it can't be compared") @Nullable Course bent,
    @JsonPropertyDescription("computed from the same pieces, each advice followed; null as bent is")
        @Nullable Course advised) {
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
    return found == null
        ? new AsAdvisedView(pieces, null, null)
        : new AsAdvisedView(pieces, Course.of(found.bent()), Course.of(found.advised()));
  }
}
