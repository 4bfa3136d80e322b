package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.LongStream;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Signal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Run tests in the words of Nelson (1984). */
final class SignalWordsTest {
  @ParameterizedTest
  @CsvSource({
    "1, 1, ABOVE, 'beyond a control limit, above'",
    "2, 9, BELOW, 9 in a row below the centre",
    "5, 3, ABOVE, '2 of 3 beyond 2 sigma, above'",
    "5, 2, BELOW, '2 of 2 beyond 2 sigma, below'",
    "6, 5, BELOW, '4 of 5 beyond 1 sigma, below'",
    "6, 4, ABOVE, '4 of 4 beyond 1 sigma, above'",
  })
  void asManyAsTheTestAsksFor(int test, int seen, Signal.Side side, String words) {
    Signal signal = new Signal(test, LongStream.rangeClosed(1, seen).boxed().toList(), side);
    assertEquals(words, SignalWords.of(signal));
  }

  /** What fires is told as the rule that it broke. */
  @ParameterizedTest
  @EnumSource(RunTest.class)
  void aSignalReadsAsItsRule(RunTest test) {
    int seen = test.window(test.usualCount());
    Signal signal =
        new Signal(
            test.number(), LongStream.rangeClosed(1, seen).boxed().toList(), Signal.Side.BOTH);
    assertEquals(SignalWords.rule(test), SignalWords.of(signal));
  }
}
