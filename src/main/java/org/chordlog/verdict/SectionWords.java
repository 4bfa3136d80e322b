package org.chordlog.verdict;

import org.chordlog.measure.Lengths;
import org.chordlog.measure.Section;

/** A section in words, its lengths as short as they were given. */
public record SectionWords(Lengths lengths) {
  /** For example "round tube 60.3 × 3.2 mm". */
  public String of(Section section) {
    return switch (section.kind()) {
      case ROUND_TUBE -> tube((Section.RoundTube) section);
      case SOLID_ROUND -> "solid round " + size(section.heightMm());
      case FLAT -> flat((Section.Flat) section);
      case BOX -> box((Section.Box) section);
      case PROFILE ->
          "profile, height %s, centroid %s from the outer face"
              .formatted(size(section.heightMm()), size(section.centroidFromOuterMm()));
    };
  }

  private String tube(Section.RoundTube tube) {
    return "round tube " + sizes(tube.outsideDiameterMm(), tube.wallMm());
  }

  private String flat(Section.Flat flat) {
    return "flat " + sizes(flat.heightMm(), flat.widthMm());
  }

  private String box(Section.Box box) {
    return "box " + sizes(box.heightMm(), box.widthMm(), box.wallMm());
  }

  private String sizes(double... mm) {
    StringBuilder text = new StringBuilder();
    for (double each : mm) {
      text.append(text.isEmpty() ? "" : " × ").append(lengths.stated(each));
    }
    return text + " " + lengths.symbol();
  }

  private String size(double mm) {
    return lengths.stated(mm) + " " + lengths.symbol();
  }
}
