package org.chordlog.web;

import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.Statement;

/** Is the job in control, is it capable, is the gauge good enough for its limits? */
record VerdictsView(Statement control, Statement capability, Statement gauge, Statement job) {
  static VerdictsView of(JobVerdict verdict) {
    return new VerdictsView(
        verdict.control(), verdict.capability(), verdict.gauge(), verdict.statement());
  }
}
