package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.GaugeStudy;

/** What is measured in a study. */
record StudySubjectJson(
    @JsonProperty("section") SectionJson section,
    @JsonProperty("measuredFace") Face measuredFace,
    @JsonProperty("specification") SpecificationJson specification,
    @JsonProperty("masters") List<MasterJson> masters) {
  static StudySubjectJson of(GaugeStudy.Subject subject) {
    return new StudySubjectJson(
        SectionJson.of(subject.section()),
        subject.measuredFace(),
        SpecificationJson.of(subject.specification()),
        subject.masters().stream().map(MasterJson::of).toList());
  }

  GaugeStudy.Subject subject() {
    return new GaugeStudy.Subject(
        section.section(),
        measuredFace,
        specification.specification(),
        masters.stream().map(MasterJson::master).toList());
  }
}
