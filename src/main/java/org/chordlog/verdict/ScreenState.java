package org.chordlog.verdict;

/** What a station's screen shows where it shows no reading of the job, and why. */
enum ScreenState {
  NOT_LIVE(Tone.BAD, "Not live", "The service does not answer. Trying again."),
  NOT_RECORDED(Tone.BAD, "Not recorded", "");

  private final Tone tone;
  private final String word;
  private final String advice;

  ScreenState(Tone tone, String word, String advice) {
    this.tone = tone;
    this.word = word;
    this.advice = advice;
  }

  /** The same in every place where a screen shows it. */
  Statement statement() {
    return new Statement(tone, word, "", advice);
  }
}
