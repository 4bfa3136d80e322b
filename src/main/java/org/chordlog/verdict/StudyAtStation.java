package org.chordlog.verdict;

/** What a station says while a study of its gauge is measured there, with or without a job. */
public final class StudyAtStation {
  private StudyAtStation() {}

  /** With the step that is next of how many; 0 when all are measured. */
  public static Finding finding(int step, int of) {
    Statement usual = StationIssue.IN_STUDY.statement();
    boolean done = step == 0;
    String far = done ? "All " + of + " steps are measured." : "Step " + step + " of " + of + ".";
    String advice = done ? "Finish it on its page." : usual.advice().toString();
    return new Finding(
        StationIssue.IN_STUDY, new Statement(usual.tone(), usual.word(), far, advice));
  }
}
