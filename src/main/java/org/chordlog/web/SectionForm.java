package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Section;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.jspecify.annotations.Nullable;

/** A section by its kind and the lengths that this kind has. */
record SectionForm(
    Section.@Nullable Kind kind,
    @JsonPropertyDescription("ROUND_TUBE") @Nullable Double outsideDiameterMm,
    @JsonPropertyDescription("ROUND_TUBE, BOX") @Nullable Double wallMm,
    @JsonPropertyDescription("SOLID_ROUND") @Nullable Double diameterMm,
    @JsonPropertyDescription("FLAT, BOX, PROFILE: in the bend plane") @Nullable Double heightMm,
    @JsonPropertyDescription("FLAT, BOX: across the bend plane") @Nullable Double widthMm,
    @JsonPropertyDescription("PROFILE") @Nullable Double centroidFromOuterMm) {
  Section section() {
    if (kind == null) {
      throw new BadInput("kind", "", "is missing", Call.names(Section.Kind.class));
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
    return switch (section.kind()) {
      case ROUND_TUBE -> tube((Section.RoundTube) section);
      case SOLID_ROUND ->
          new SectionForm(section.kind(), null, null, section.heightMm(), null, null, null);
      case FLAT -> flat((Section.Flat) section);
      case BOX -> box((Section.Box) section);
      case PROFILE ->
          new SectionForm(
              section.kind(),
              null,
              null,
              null,
              section.heightMm(),
              null,
              section.centroidFromOuterMm());
    };
  }

  private static SectionForm tube(Section.RoundTube tube) {
    return new SectionForm(
        tube.kind(), tube.outsideDiameterMm(), tube.wallMm(), null, null, null, null);
  }

  private static SectionForm flat(Section.Flat flat) {
    return new SectionForm(flat.kind(), null, null, null, flat.heightMm(), flat.widthMm(), null);
  }

  private static SectionForm box(Section.Box box) {
    return new SectionForm(
        box.kind(), null, box.wallMm(), null, box.heightMm(), box.widthMm(), null);
  }
}
