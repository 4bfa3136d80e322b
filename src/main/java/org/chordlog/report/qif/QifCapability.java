package org.chordlog.report.qif;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.capability.Summary;
import org.jspecify.annotations.Nullable;

/**
 * Capability at one position, the summary's characteristic, and whether the process is in control
 * there. {@code fromRanges} says that the standard deviation within comes from ranges, which alone
 * has an element of its own in QIF; control limits are those of the values or means, mm.
 */
public record QifCapability(
    Summary summary,
    boolean inControl,
    boolean fromRanges,
    @Nullable Double lowerControlMm,
    @Nullable Double upperControlMm,
    List<QifIssue> issues) {
  public QifCapability {
    issues = List.copyOf(issues);
    if (lowerControlMm != null && upperControlMm != null && lowerControlMm > upperControlMm) {
      throw new BadInput(
          "lowerControlMm", lowerControlMm, "is above the upper one", "up to " + upperControlMm);
    }
  }
}
