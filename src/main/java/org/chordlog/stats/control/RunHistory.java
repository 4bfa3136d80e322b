package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chordlog.stats.control.Signal.Side;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** The newest standardised points of a phase, and the run tests that the newest one breaks. */
final class RunHistory {
  private final RunRules rules;
  private final int[] needed = new int[RunTest.ALL.length];
  private final double[] zs = new double[RunTest.LONGEST];
  private final long[] numbers = new long[RunTest.LONGEST];
  private int count;

  RunHistory(RunRules rules) {
    this.rules = rules;
    for (RunTest test : RunTest.ALL) {
      needed[test.number() - 1] = rules.count(test);
    }
  }

  List<Signal> add(long number, double z, boolean varies) {
    if (Double.isNaN(z)) {
      return List.of();
    }
    push(number, z);
    List<Signal> signals = List.of();
    for (RunTest test : RunTest.ALL) {
      int least = needed[test.number() - 1];
      if (least > 0 && least <= count && (varies || test == RunTest.BEYOND_LIMIT)) {
        signals = judge(test, least, signals);
      }
    }
    return signals;
  }

  private List<Signal> judge(RunTest test, int least, List<Signal> before) {
    int window = Math.min(count, test.window(least));
    Side side = test.broken(zs, RunTest.LONGEST - window, least);
    if (side == null) {
      return before;
    }
    List<Signal> signals = new ArrayList<>(before);
    signals.add(new Signal(test.number(), points(window), side));
    return signals;
  }

  private List<Long> points(int window) {
    return Arrays.stream(numbers, RunTest.LONGEST - window, RunTest.LONGEST).boxed().toList();
  }

  private void push(long number, double z) {
    int last = RunTest.LONGEST - 1;
    System.arraycopy(zs, 1, zs, 0, last);
    System.arraycopy(numbers, 1, numbers, 0, last);
    zs[last] = z;
    numbers[last] = number;
    count = Math.min(count + 1, RunTest.LONGEST);
  }

  void restart() {
    count = 0;
  }

  RunHistory copy() {
    RunHistory copy = new RunHistory(rules);
    System.arraycopy(zs, 0, copy.zs, 0, RunTest.LONGEST);
    System.arraycopy(numbers, 0, copy.numbers, 0, RunTest.LONGEST);
    copy.count = count;
    return copy;
  }

  void pack(Packer packer) {
    packer.put(count);
    for (int i = RunTest.LONGEST - count; i < RunTest.LONGEST; i++) {
      packer.put(numbers[i]).put(zs[i]);
    }
  }

  void unpack(Unpacker from) {
    int stored = from.anInt();
    for (int i = 0; i < stored; i++) {
      push(from.aLong(), from.aDouble());
    }
  }
}
