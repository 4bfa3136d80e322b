package org.chordlog.web;

import org.chordlog.measure.SpecificationRevision;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** A revision of a job's specification: who changed it when, from what to what, and why. */
record RevisionView(
    int revision,
    String at,
    String by,
    String why,
    @Nullable SpecificationForm from,
    SpecificationForm to) {
  static RevisionView of(SpecificationRevision r) {
    return new RevisionView(
        r.revision(),
        Times.iso(r.atMicros()),
        r.by(),
        r.why(),
        r.from() == null ? null : SpecificationForm.of(r.from()),
        SpecificationForm.of(r.to()));
  }
}
