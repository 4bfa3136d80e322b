package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import org.chordlog.measure.Section;

/** A section; its kind comes first. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = SectionJson.RoundTube.class, name = "ROUND_TUBE"),
  @JsonSubTypes.Type(value = SectionJson.SolidRound.class, name = "SOLID_ROUND"),
  @JsonSubTypes.Type(value = SectionJson.Flat.class, name = "FLAT"),
  @JsonSubTypes.Type(value = SectionJson.Box.class, name = "BOX"),
  @JsonSubTypes.Type(value = SectionJson.Profile.class, name = "PROFILE")
})
sealed interface SectionJson {
  Section section();

  /** A round tube. */
  record RoundTube(
      @JsonProperty("outsideDiameterMm") double outsideDiameterMm,
      @JsonProperty("wallMm") double wallMm)
      implements SectionJson {
    @Override
    public Section section() {
      return new Section.RoundTube(outsideDiameterMm, wallMm);
    }
  }

  /** A solid round. */
  record SolidRound(@JsonProperty("diameterMm") double diameterMm) implements SectionJson {
    @Override
    public Section section() {
      return new Section.SolidRound(diameterMm);
    }
  }

  /** A flat. */
  record Flat(@JsonProperty("heightMm") double heightMm, @JsonProperty("widthMm") double widthMm)
      implements SectionJson {
    @Override
    public Section section() {
      return new Section.Flat(heightMm, widthMm);
    }
  }

  /** A box section. */
  record Box(
      @JsonProperty("heightMm") double heightMm,
      @JsonProperty("widthMm") double widthMm,
      @JsonProperty("wallMm") double wallMm)
      implements SectionJson {
    @Override
    public Section section() {
      return new Section.Box(heightMm, widthMm, wallMm);
    }
  }

  /** Any other profile. */
  record Profile(
      @JsonProperty("heightMm") double heightMm,
      @JsonProperty("centroidFromOuterMm") double centroidFromOuterMm)
      implements SectionJson {
    @Override
    public Section section() {
      return new Section.Profile(heightMm, centroidFromOuterMm);
    }
  }

  static SectionJson of(Section section) {
    return switch (section.kind()) {
      case ROUND_TUBE -> of((Section.RoundTube) section);
      case SOLID_ROUND -> new SolidRound(((Section.SolidRound) section).diameterMm());
      case FLAT -> of((Section.Flat) section);
      case BOX -> of((Section.Box) section);
      case PROFILE -> of((Section.Profile) section);
    };
  }

  private static SectionJson of(Section.RoundTube tube) {
    return new RoundTube(tube.outsideDiameterMm(), tube.wallMm());
  }

  private static SectionJson of(Section.Flat flat) {
    return new Flat(flat.heightMm(), flat.widthMm());
  }

  private static SectionJson of(Section.Box box) {
    return new Box(box.heightMm(), box.widthMm(), box.wallMm());
  }

  private static SectionJson of(Section.Profile profile) {
    return new Profile(profile.heightMm(), profile.centroidFromOuterMm());
  }
}
