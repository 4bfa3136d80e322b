package org.chordlog.stats.control;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Check;

/** Which run tests are on, each with its count. */
public record RunRules(Map<RunTest, Integer> counts) {
  public RunRules {
    counts.forEach(
        (test, count) -> Check.within("runTest" + test.number(), count, least(test), most(test)));
    counts = Collections.unmodifiableMap(inOrder(counts));
  }

  /**
   * Keeps the order of the constants: Map.copyOf iterates in a random order in each process, and
   * checkpoints store the text.
   */
  private static Map<RunTest, Integer> inOrder(Map<RunTest, Integer> counts) {
    Map<RunTest, Integer> ordered = new EnumMap<>(RunTest.class);
    ordered.putAll(counts);
    return ordered;
  }

  /** All eight with Nelson's counts. */
  public static RunRules nelson() {
    return only(RunTest.values());
  }

  /** Those tests with their usual counts, and no other. */
  public static RunRules only(RunTest... tests) {
    Map<RunTest, Integer> counts = new EnumMap<>(RunTest.class);
    for (RunTest test : tests) {
      counts.put(test, test.usualCount());
    }
    return new RunRules(counts);
  }

  /** The same with that test at another count. */
  public RunRules with(RunTest test, int count) {
    Map<RunTest, Integer> changed = inOrder(counts);
    changed.put(test, count);
    return new RunRules(changed);
  }

  /** The same without that test. */
  public RunRules without(RunTest test) {
    Map<RunTest, Integer> changed = inOrder(counts);
    changed.remove(test);
    return new RunRules(changed);
  }

  /** 0 where the test is off. */
  public int count(RunTest test) {
    Integer count = counts.get(test);
    return count == null ? 0 : count;
  }

  RunRules within(Set<RunTest> tests) {
    Map<RunTest, Integer> kept = inOrder(counts);
    kept.keySet().retainAll(tests);
    return new RunRules(kept);
  }

  private static int least(RunTest test) {
    return test == RunTest.TREND || test == RunTest.ALTERNATING ? 3 : 1;
  }

  private static int most(RunTest test) {
    return RunTest.LONGEST - test.window(0);
  }
}
