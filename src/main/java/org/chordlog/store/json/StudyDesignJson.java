package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.chordlog.measure.GaugeStudy;

/** Who measures what how often in a study. */
record StudyDesignJson(
    @JsonProperty("kind") GaugeStudy.Kind kind,
    @JsonProperty("parts") List<String> parts,
    @JsonProperty("places") List<String> places,
    @JsonProperty("operators") List<String> operators,
    @JsonProperty("repeats") int repeats,
    @JsonProperty("seed") long seed) {
  static StudyDesignJson of(GaugeStudy.Design design) {
    return new StudyDesignJson(
        design.kind(),
        design.parts(),
        design.places(),
        design.operators(),
        design.repeats(),
        design.seed());
  }

  GaugeStudy.Design design() {
    return new GaugeStudy.Design(kind, parts, places, operators, repeats, seed);
  }
}
