package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Sentence;
import org.chordlog.verdict.SectionWords;
import org.chordlog.verdict.Words;
import org.chordlog.web.http.Times;

/** A job as the API shows it. */
record JobView(
    long id,
    String name,
    String part,
    String machine,
    String station,
    SectionForm section,
    @JsonPropertyDescription("the section in words") Sentence sectionWords,
    @JsonPropertyDescription("that the job began with") String materialLot,
    @JsonPropertyDescription("in the machine now") String currentLot,
    Face measuredFace,
    SpecificationForm specification,
    @JsonPropertyDescription("of the specification, from 1") int revision,
    @JsonPropertyDescription(
            "of the whole job; sent back as If-Match, a change is refused (412)"
                + " when somebody else changed the job since")
        String version,
    PlanForm plan,
    @JsonPropertyDescription("the plan in words") String planWords,
    DetailsForm details,
    Job.State state,
    String openedAt,
    @JsonPropertyDescription("whether the readings of its station go to it") boolean active,
    long readings) {
  static JobView of(Job job, String currentLot, boolean active, long readings) {
    return new JobView(
        job.id(),
        job.name(),
        job.part(),
        job.machine(),
        job.station(),
        SectionForm.of(job.section()),
        SectionWords.of(job.section()),
        job.materialLot(),
        currentLot,
        job.measuredFace(),
        SpecificationForm.of(job.specification()),
        job.revision(),
        JobVersion.of(job),
        PlanForm.of(job.plan()),
        Words.of(job.plan()),
        DetailsForm.of(job.details()),
        job.state(),
        Times.iso(job.openedAtMicros()),
        active,
        readings);
  }
}
