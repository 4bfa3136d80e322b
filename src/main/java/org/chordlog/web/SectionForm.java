package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Section;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.jspecify.annotations.Nullable;

/** A section by its kind and the lengths that this kind has. */
record SectionForm(
    @Nullable Kind kind,
    @JsonPropertyDescription("ROUND_TUBE") @Nullable Double outsideDiameterMm,
    @JsonPropertyDescription("ROUND_TUBE, BOX") @Nullable Double wallMm,
    @JsonPropertyDescription("SOLID_ROUND") @Nullable Double diameterMm,
    @JsonPropertyDescription("FLAT, BOX, PROFILE: in the bend plane") @Nullable Double heightMm,
    @JsonPropertyDescription("FLAT, BOX: across the bend plane") @Nullable Double widthMm,
    @JsonPropertyDescription("PROFILE") @Nullable Double centroidFromOuterMm) {
  /** Kinds of section. */
  enum Kind {
    ROUND_TUBE,
    SOLID_ROUND,
    FLAT,
    BOX,
    PROFILE
  }

  Section section() {
    if (kind == null) {
      throw new BadInput("kind", "", "is missing", Call.names(Kind.class));
    }
    return switch (kind) {
      case ROUND_TUBE ->
          new Section.RoundTube(
              Faults.number(outsideDiameterMm, "outsideDiameterMm"),
              Faults.number(wallMm, "wallMm"));
      case SOLID_ROUND -> new Section.SolidRound(Faults.number(diameterMm, "diameterMm"));
      case FLAT ->
          new Section.Flat(Faults.number(heightMm, "heightMm"), Faults.number(widthMm, "widthMm"));
      case BOX ->
          new Section.Box(
              Faults.number(heightMm, "heightMm"),
              Faults.number(widthMm, "widthMm"),
              Faults.number(wallMm, "wallMm"));
      case PROFILE ->
          new Section.Profile(
              Faults.number(heightMm, "heightMm"),
              Faults.number(centroidFromOuterMm, "centroidFromOuterMm"));
    };
  }

  static SectionForm of(Section section) {
    if (section instanceof Section.RoundTube tube) {
      return new SectionForm(
          Kind.ROUND_TUBE, tube.outsideDiameterMm(), tube.wallMm(), null, null, null, null);
    }
    if (section instanceof Section.SolidRound round) {
      return new SectionForm(Kind.SOLID_ROUND, null, null, round.diameterMm(), null, null, null);
    }
    if (section instanceof Section.Flat flat) {
      return new SectionForm(Kind.FLAT, null, null, null, flat.heightMm(), flat.widthMm(), null);
    }
    if (section instanceof Section.Box box) {
      return new SectionForm(
          Kind.BOX, null, box.wallMm(), null, box.heightMm(), box.widthMm(), null);
    }
    Section.Profile profile = (Section.Profile) section;
    return new SectionForm(
        Kind.PROFILE, null, null, null, profile.heightMm(), null, profile.centroidFromOuterMm());
  }
}
