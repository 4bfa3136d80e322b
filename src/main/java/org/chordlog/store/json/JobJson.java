package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.jspecify.annotations.Nullable;

/** A job as the record of changes keeps it. */
record JobJson(
    @JsonProperty("id") long id,
    @JsonProperty("name") String name,
    @JsonProperty("part") String part,
    @JsonProperty("machine") String machine,
    @JsonProperty("station") String station,
    @JsonProperty("section") SectionJson section,
    @JsonProperty("materialLot") String materialLot,
    @JsonProperty("measuredFace") Face measuredFace,
    @JsonProperty("specification") SpecificationJson specification,
    @JsonProperty("plan") PlanJson plan,
    @JsonProperty("state") Job.State state,
    @JsonProperty("openedAtMicros") long openedAtMicros,
    @JsonInclude(JsonInclude.Include.NON_NULL) @JsonProperty("customer") @Nullable String customer,
    @JsonInclude(JsonInclude.Include.NON_NULL) @JsonProperty("drawingRevision")
        @Nullable String drawingRevision,
    @JsonInclude(JsonInclude.Include.NON_NULL) @JsonProperty("developedLengthMm")
        @Nullable Double developedLengthMm,
    @JsonInclude(JsonInclude.Include.NON_NULL) @JsonProperty("developedAngleDegrees")
        @Nullable Double developedAngleDegrees) {
  static JobJson of(Job job) {
    return new JobJson(
        job.id(),
        job.name(),
        job.part(),
        job.machine(),
        job.station(),
        SectionJson.of(job.section()),
        job.materialLot(),
        job.measuredFace(),
        SpecificationJson.of(job.specification()),
        PlanJson.of(job.plan()),
        job.state(),
        job.openedAtMicros(),
        job.details().customer(),
        job.details().drawingRevision(),
        job.details().developedLengthMm(),
        job.details().developedAngleDegrees());
  }
}
