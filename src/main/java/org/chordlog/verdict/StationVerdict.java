package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** May this station be relied on now? Its findings, the most urgent first. */
public record StationVerdict(List<Finding> findings) {
  public StationVerdict {
    findings = findings.stream().sorted(Comparator.comparing(Finding::issue)).toList();
  }

  /** Gathers what is found. */
  public static final class Builder {
    private final List<Finding> findings = new ArrayList<>();

    /** Adds the issue where that is so. */
    public Builder when(boolean so, StationIssue issue) {
      return so ? add(Finding.of(issue)) : this;
    }

    /** With a statement of its own in place of the issue's usual one. */
    public Builder add(Finding finding) {
      findings.add(finding);
      return this;
    }

    /** The verdict over all that was added. */
    public StationVerdict build() {
      return new StationVerdict(findings);
    }
  }

  /** Whether that issue was found. */
  public boolean has(StationIssue issue) {
    return findings.stream().anyMatch(each -> each.issue() == issue);
  }

  /** The most urgent finding that forbids acting on a reading. */
  public Optional<Finding> firstForbidding() {
    return findings.stream().filter(each -> each.issue().forbidsActing()).findFirst();
  }

  /** Why its readings must not be acted on, as the end of a sentence; empty if they may be. */
  public String doubt() {
    return firstForbidding().map(finding -> finding.said() + ".").orElse("");
  }

  /** Whether nothing forbids acting on its readings. */
  public boolean reliable() {
    return firstForbidding().isEmpty();
  }

  /** Lower is more urgent; for sorting stations. */
  public int urgency() {
    return (int) Arrays.stream(StationIssue.values()).takeWhile(issue -> !has(issue)).count();
  }

  /** The station in one statement. */
  public Statement statement() {
    return findings.stream()
        .filter(each -> !each.issue().ofPiece())
        .findFirst()
        .map(Finding::statement)
        .orElse(Statement.of(Tone.GOOD, "Ready to measure", ""));
  }
}
