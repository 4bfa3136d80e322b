package org.chordlog.web;

import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.verdict.Statement;

/** Is the job in control and capable, its gauge good enough, and its machine steady now? */
record VerdictsView(
    Statement control, Statement capability, Statement gauge, Statement machine, Statement job) {
  static VerdictsView of(JobVerdict verdict, MachineStatement machine) {
    return new VerdictsView(
        verdict.control(),
        verdict.capability(),
        verdict.gauge(),
        machine.statement(),
        verdict.statement());
  }
}
