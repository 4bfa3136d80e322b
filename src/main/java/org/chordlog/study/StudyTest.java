package org.chordlog.study;

import org.jspecify.annotations.Nullable;

/**
 * A test of significance: its statistic with the degrees of freedom (the second for F alone), the
 * p-value, and what it says in plain words.
 */
public record StudyTest(
    String name,
    double statistic,
    double degreesOfFreedom,
    @Nullable Double secondDegreesOfFreedom,
    double p,
    String says) {
  /** Level at which a test is said to have found something. */
  public static final double LEVEL = 0.05;

  public boolean found() {
    return p < LEVEL;
  }
}
