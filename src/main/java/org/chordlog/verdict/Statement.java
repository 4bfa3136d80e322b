package org.chordlog.verdict;

import org.chordlog.measure.Check;

/**
 * One judgement for one reader: a word or two to be read from afar, the reason as a sentence, and
 * what to do as a sentence; either sentence may be empty.
 */
public record Statement(Tone tone, String word, String reason, String advice) {
  public Statement {
    Check.text("word", word);
  }

  static Statement of(Tone tone, String word, String reason) {
    return new Statement(tone, word, reason, "");
  }

  Statement withAdvice(String changed) {
    return new Statement(tone, word, reason, changed);
  }
}
