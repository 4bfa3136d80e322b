package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.correction.AsAdvised;

/** The newest pieces of a job as they were bent, and as advised. */
record AsAdvisedView(
    int pieces,
    @JsonPropertyDescription("as measured") Course bent,
    @JsonPropertyDescription("computed from the same pieces, each advice followed")
        Course advised) {
  /** How they came out. */
  record Course(
      @JsonPropertyDescription("deviation from the target, mm") double rootMeanSquareMm,
      @JsonPropertyDescription("pieces out of tolerance") int out,
      int corrections) {
    static Course of(AsAdvised.Course course) {
      return new Course(course.rootMeanSquareMm(), course.out(), course.corrections());
    }
  }

  static AsAdvisedView of(AsAdvised found) {
    return new AsAdvisedView(found.pieces(), Course.of(found.bent()), Course.of(found.advised()));
  }
}
