package org.chordlog.study;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Tests of a fitted line. */
final class LineTests {
  private LineTests() {}

  static StudyTest slope(StraightLine line) {
    return test("slope", line.slope() / line.slopeDeviation(), line);
  }

  static StudyTest intercept(StraightLine line) {
    return test("intercept", line.at(0) / line.deviationAt(0), line);
  }

  private static StudyTest test(String name, double t, StraightLine line) {
    double p = 2 * TDistribution.of(line.degreesOfFreedom()).survivalProbability(Math.abs(t));
    String says = (p < StudyTest.LEVEL ? "differs" : "does not differ") + " from 0.";
    return new StudyTest(name, t, line.degreesOfFreedom(), null, p, "The " + name + " " + says);
  }

  /**
   * F of what the line leaves of the groups' means against the scatter within groups of one x;
   * empty without repeats or with two groups.
   */
  static Optional<StudyTest> lackOfFit(StraightLine line, Collection<List<Double>> groups) {
    double pure = groups.stream().mapToDouble(own -> Means.squares(Means.array(own))).sum();
    double outer = groups.size() - 2.0;
    double inner = line.points() - (double) groups.size();
    if (outer < 1 || inner < 1 || pure == 0) {
      return Optional.empty();
    }
    double f = Math.max(0, line.residualSquares() - pure) / outer / (pure / inner);
    double p = FDistribution.of(outer, inner).survivalProbability(f);
    String says =
        "The biases " + (p < StudyTest.LEVEL ? "do not follow" : "follow") + " a straight line.";
    return Optional.of(new StudyTest("lack of fit", f, outer, inner, p, says));
  }
}
