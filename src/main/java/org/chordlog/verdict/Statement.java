package org.chordlog.verdict;

import org.chordlog.measure.Check;
import org.chordlog.measure.Sentence;

/**
 * One judgement for one reader: a word or two to be read from afar, the reason as a sentence, and
 * what to do as a sentence; either sentence may be empty.
 */
public record Statement(Tone tone, String word, Sentence reason, Sentence advice) {
  public Statement {
    Check.text("word", word);
  }

  /** In sentences that hold no length. */
  public Statement(Tone tone, String word, String reason, String advice) {
    this(tone, word, Sentence.plain(reason), Sentence.plain(advice));
  }

  static Statement of(Tone tone, String word, String reason) {
    return new Statement(tone, word, reason, "");
  }

  Statement withAdvice(Sentence changed) {
    return new Statement(tone, word, reason, changed);
  }
}
