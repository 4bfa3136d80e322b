package org.chordlog.verdict;

/** One issue of a station, as said of it now. */
public record Finding(StationIssue issue, Statement statement) {
  /** Within a sentence. */
  String said() {
    String word = statement.word();
    return Character.toLowerCase(word.charAt(0)) + word.substring(1);
  }

  static Finding of(StationIssue issue) {
    return new Finding(issue, issue.statement());
  }
}
