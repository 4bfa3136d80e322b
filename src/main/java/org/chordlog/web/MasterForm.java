package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Objects;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** What a master is made from. */
record MasterForm(
    @Needed @Nullable String name,
    @Needed @Nullable Face face,
    @Needed @Nullable Double radiusMm,
    @Needed @Nullable Double expandedUncertaintyMm,
    @JsonPropertyDescription("by how much an interim check on it may differ")
        @Nullable Double checkLimitMm) {
  Master master() {
    Faults faults = new Faults();
    faults.needed("name", name, "a text");
    faults.needed("radiusMm", radiusMm, Faults.A_LENGTH);
    faults.needed("expandedUncertaintyMm", expandedUncertaintyMm, Faults.A_LENGTH);
    Face told = faults.needed("face", face, "outer, inner");
    if (told == Face.CENTRELINE) {
      faults.add("face", told, "can't carry a bridge", "outer, inner");
    }
    faults.refuse();
    return new Master(
        0,
        Objects.requireNonNull(name),
        Objects.requireNonNull(face),
        Objects.requireNonNull(radiusMm),
        Objects.requireNonNull(expandedUncertaintyMm),
        checkLimitMm);
  }
}
