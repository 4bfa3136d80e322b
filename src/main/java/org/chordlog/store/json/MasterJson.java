package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.jspecify.annotations.Nullable;

/** A master as it was when it was measured. */
record MasterJson(
    @JsonProperty("id") long id,
    @JsonProperty("name") String name,
    @JsonProperty("face") Face face,
    @JsonProperty("radiusMm") double radiusMm,
    @JsonProperty("expandedUncertaintyMm") double expandedUncertaintyMm,
    @JsonProperty("checkLimitMm") @Nullable Double checkLimitMm) {
  static MasterJson of(Master master) {
    return new MasterJson(
        master.id(),
        master.name(),
        master.face(),
        master.radiusMm(),
        master.expandedUncertaintyMm(),
        master.checkLimitMm());
  }

  Master master() {
    return new Master(id, name, face, radiusMm, expandedUncertaintyMm, checkLimitMm);
  }
}
