package org.chordlog.measure;

/**
 * A depth taken for one step of a study, never changed once stored; {@code depthNm} is after the
 * zero of its set-up.
 */
public record StudyMeasurement(
    long id, long studyId, int step, CapturedDepth captured, long depthNm, Result result) {
  /** What it was computed from and what came of it, 1/mm. */
  public record Result(long setUpId, double curvaturePerMm, double standardUncertaintyPerMm) {
    public Result {
      Check.finite("curvaturePerMm", curvaturePerMm);
      Check.positive("standardUncertaintyPerMm", standardUncertaintyPerMm);
    }
  }

  public StudyMeasurement {
    Check.within("step", step, 1, Integer.MAX_VALUE);
  }

  /** The same measurement under another id. */
  public StudyMeasurement withId(long other) {
    return new StudyMeasurement(other, studyId, step, captured, depthNm, result);
  }
}
