package org.chordlog.verdict;

import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;

/** A section in words, its lengths as short as they were given. */
public final class SectionWords {
  private SectionWords() {}

  /** The kind alone. */
  public static String of(Section.Kind kind) {
    return switch (kind) {
      case ROUND_TUBE -> "Round tube";
      case SOLID_ROUND -> "Solid round";
      case FLAT -> "Flat bar";
      case BOX -> "Rectangular tube";
      case PROFILE -> "Other profile";
    };
  }

  /** For example "Round tube 60.3 × 3.2 mm". */
  public static Sentence of(Section section) {
    return switch (section.kind()) {
      case ROUND_TUBE -> tube((Section.RoundTube) section);
      case SOLID_ROUND -> sizes(section, section.heightMm());
      case FLAT -> flat((Section.Flat) section);
      case BOX -> box((Section.Box) section);
      case PROFILE ->
          Sentence.of(
              "%s, height %s, centroid %s from the outer face",
              of(section.kind()),
              Quantity.stated(section.heightMm()),
              Quantity.stated(section.centroidFromOuterMm()));
    };
  }

  private static Sentence tube(Section.RoundTube tube) {
    return sizes(tube, tube.outsideDiameterMm(), tube.wallMm());
  }

  private static Sentence flat(Section.Flat flat) {
    return sizes(flat, flat.heightMm(), flat.widthMm());
  }

  private static Sentence box(Section.Box box) {
    return sizes(box, box.heightMm(), box.widthMm(), box.wallMm());
  }

  /** The unit stands behind the last one alone. */
  private static Sentence sizes(Section section, double... mm) {
    int last = mm.length - 1;
    Sentence sizes =
        Sentence.joined(
            " × ", IntStream.range(0, mm.length).mapToObj(i -> size(mm[i], i == last)).toList());
    return Sentence.joined(" ", List.of(Sentence.plain(of(section.kind())), sizes));
  }

  private static Sentence size(double mm, boolean withUnit) {
    Quantity stated = Quantity.stated(mm);
    return Sentence.of("%s", withUnit ? stated : stated.withoutUnit());
  }
}
