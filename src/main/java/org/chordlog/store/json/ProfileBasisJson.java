package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.PassedProfile.Basis;
import org.chordlog.measure.PassedProfile.Extent;
import org.jspecify.annotations.Nullable;

/** What a profile was evaluated by. */
record ProfileBasisJson(
    @JsonProperty("source") LengthSource source,
    @JsonProperty("lengthFace") Face lengthFace,
    @JsonProperty("known") KnownJson known,
    @JsonProperty("decideBy") DecideBy decideBy,
    @JsonProperty("extent") ExtentJson extent) {
  record KnownJson(
      @JsonProperty("pieceMm") @Nullable Double pieceMm,
      @JsonProperty("leadInMm") @Nullable Double leadInMm,
      @JsonProperty("leadOutMm") @Nullable Double leadOutMm,
      @JsonProperty("riseMm") @Nullable Double riseMm,
      @JsonProperty("stretchMm") @Nullable Double stretchMm) {
    static KnownJson of(KnownLengths known) {
      return new KnownJson(
          known.pieceMm(), known.leadInMm(), known.leadOutMm(), known.riseMm(), known.stretchMm());
    }

    KnownLengths known() {
      return new KnownLengths(pieceMm, leadInMm, leadOutMm, riseMm, stretchMm);
    }
  }

  record ExtentJson(
      @JsonProperty("fromMm") double fromMm,
      @JsonProperty("toMm") double toMm,
      @JsonProperty("openStart") boolean openStart,
      @JsonProperty("openEnd") boolean openEnd,
      @JsonProperty("stretch") int stretch) {
    static ExtentJson of(Extent extent) {
      return new ExtentJson(
          extent.fromMm(), extent.toMm(), extent.openStart(), extent.openEnd(), extent.stretch());
    }

    Extent extent() {
      return new Extent(fromMm, toMm, openStart, openEnd, stretch);
    }
  }

  static ProfileBasisJson of(Basis basis) {
    return new ProfileBasisJson(
        basis.source(),
        basis.lengthFace(),
        KnownJson.of(basis.known()),
        basis.decideBy(),
        ExtentJson.of(basis.extent()));
  }

  Basis basis() {
    return new Basis(source, lengthFace, known.known(), decideBy, extent.extent());
  }
}
