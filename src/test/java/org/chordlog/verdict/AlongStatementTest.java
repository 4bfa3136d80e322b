package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;
import org.junit.jupiter.api.Test;

/** What is said of how even pieces are along their length. */
final class AlongStatementTest {
  /** Every other piece a little more; from piece 31 on far more of both. */
  private static AlongStatistics.Piece piece(int number) {
    double more = (number > 30 ? 2 : 0) + (number % 2) * 0.1;
    return new AlongStatistics.Piece(number, number, number, 0.4 + more, more, 0.02);
  }

  @Test
  void isSaidAsOfTheRadiusWithWhatToLookAtAndTheCaution() {
    AlongStatistics along = new AlongStatistics();
    assertEquals(
        "Too early to tell",
        new AlongStatement(AlongMeasure.RANGE, along.control(AlongMeasure.RANGE))
            .statement()
            .word());
    for (int i = 1; i <= 34; i++) {
      along.add(piece(i));
    }
    for (AlongMeasure measure : AlongMeasure.values()) {
      Statement said = new AlongStatement(measure, along.control(measure)).statement();
      assertEquals("Not in control", said.word());
      assertEquals(Tone.OPEN, said.tone());
      assertTrue(said.reason().toString().startsWith("Piece"), () -> said.reason().toString());
      String advice = said.advice().toString();
      assertTrue(advice.startsWith("Look at the newest pieces"), advice);
      assertTrue(advice.contains("drive is locked out"), advice);
    }
  }
}
