package org.chordlog.verdict;

/** One issue of a station, as said of it now. */
public record Finding(StationIssue issue, Statement statement) {
  static Finding of(StationIssue issue) {
    return new Finding(issue, issue.statement());
  }
}
