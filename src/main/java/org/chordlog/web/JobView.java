package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Times;

/** A job as the API shows it. */
record JobView(
    long id,
    String name,
    String part,
    String machine,
    String station,
    SectionForm section,
    String materialLot,
    Face measuredFace,
    SpecificationForm specification,
    PlanForm plan,
    Job.State state,
    String openedAt,
    @JsonPropertyDescription("whether the readings of its station go to it") boolean active,
    long readings) {
  static JobView of(Job job, boolean active, long readings) {
    return new JobView(
        job.id(),
        job.name(),
        job.part(),
        job.machine(),
        job.station(),
        SectionForm.of(job.section()),
        job.materialLot(),
        job.measuredFace(),
        SpecificationForm.of(job.specification()),
        PlanForm.of(job.plan()),
        job.state(),
        Times.iso(job.openedAtMicros()),
        active,
        readings);
  }
}
