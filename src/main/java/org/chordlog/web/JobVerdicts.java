package org.chordlog.web;

import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Summary;
import org.chordlog.verdict.CapabilityVerdict;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.GaugeVerdict;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Tone;

/** Is the job in control, is it capable, is the gauge good enough for its limits? */
record JobVerdicts(Statement control, Statement capability, Statement gauge) {
  private static final int FEW = 20;

  static JobVerdicts of(Summary summary, Specification specification) {
    Statement control = control(summary);
    return new JobVerdicts(
        control,
        new CapabilityVerdict(summary, control.tone() != Tone.OPEN).statement(),
        new GaugeVerdict(summary, specification).statement());
  }

  private static Statement control(Summary summary) {
    return summary.cautions().stream()
        .filter(each -> each.kind() == Caution.Kind.NOT_IN_CONTROL)
        .findFirst()
        .map(each -> new Statement(Tone.OPEN, "Not in control", each.text(), ""))
        .orElse(quiet(summary.count()));
  }

  private static Statement quiet(long count) {
    if (count == 0) {
      return new Statement(Tone.QUIET, "No readings yet", "", "");
    }
    String readings = Counted.of(count, "reading");
    return count < FEW
        ? new Statement(Tone.QUIET, "Control unknown", readings + ": too few to tell.", "")
        : new Statement(Tone.GOOD, "In control", "No run test fires in " + readings + ".", "");
  }
}
