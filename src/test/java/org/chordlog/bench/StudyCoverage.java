package org.chordlog.bench;

import java.util.Map;
import org.chordlog.study.Coverage;
import org.chordlog.study.Coverage.Counts;
import org.chordlog.study.Coverage.Design;
import org.chordlog.study.CoverageDesigns;

/**
 * Coverage of every interval of the studies, by simulation: {@code StudyCoverage [STUDIES [SEED
 * [NAME]]]}, 2,000 studies a design unless told otherwise, of designs whose name begins with NAME.
 * The standard error of a coverage of 95 % is then 0.5 %. Ends with code 1 if a coverage is off 95
 * % by more than 1.5 %.
 */
public final class StudyCoverage {
  private static final double WANTED = 95;
  private static final double WITHIN = 1.5;

  private StudyCoverage() {}

  public static void main(String[] arguments) {
    int studies = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2_000;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
    String name = arguments.length > 2 ? arguments[2] : "";
    int outside = 0;
    for (Design design : CoverageDesigns.all()) {
      if (!design.name().startsWith(name)) {
        continue;
      }
      System.out.printf("%n%s, %d studies%n", design.name(), studies);
      for (Map.Entry<String, Counts> found : Coverage.of(design, studies, seed).entrySet()) {
        outside += print(found.getKey(), found.getValue()) ? 0 : 1;
      }
    }
    System.out.printf("%n%d coverages are off 95 %% by more than 1.5 %%%n", outside);
    System.exit(outside == 0 ? 0 : 1);
  }

  private static boolean print(String name, Counts counts) {
    boolean well = Math.abs(counts.percent() - WANTED) <= WITHIN;
    System.out.printf(
        "  %-28s %5.1f %%  (below the truth %4.1f, above %4.1f)%s%n",
        name,
        counts.percent(),
        100.0 * counts.below() / counts.studies(),
        100.0 * counts.above() / counts.studies(),
        well ? "" : "  *");
    return well;
  }
}
