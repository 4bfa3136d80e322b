package org.chordlog.cli.common;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Section;

/** A section as text: {@code tube:50x3}, {@code round:30}, {@code flat:60x10}, and so on. */
public final class SectionText {
  public static final String ALLOWED =
      "tube:DIAMETERxWALL, round:DIAMETER, flat:HEIGHTxWIDTH, box:HEIGHTxWIDTHxWALL,"
          + " profile:HEIGHTxCENTROID_FROM_OUTER";

  private SectionText() {}

  /** Sizes are in the command's unit of length; {@link BadInput} where it is no section. */
  public static Section parse(String text, LengthOptions lengths) {
    int colon = text.indexOf(':');
    if (colon < 0) {
      throw bad(text);
    }
    List<Double> sizes = sizes(text, text.substring(colon + 1), lengths);
    String kind = text.substring(0, colon) + sizes.size();
    return switch (kind) {
      case "tube2" -> new Section.RoundTube(sizes.get(0), sizes.get(1));
      case "round1" -> new Section.SolidRound(sizes.get(0));
      case "flat2" -> new Section.Flat(sizes.get(0), sizes.get(1));
      case "box3" -> new Section.Box(sizes.get(0), sizes.get(1), sizes.get(2));
      case "profile2" -> new Section.Profile(sizes.get(0), sizes.get(1));
      default -> throw bad(text);
    };
  }

  private static List<Double> sizes(String whole, String text, LengthOptions lengths) {
    List<Double> sizes = new ArrayList<>();
    for (String size : text.split("x", -1)) {
      if (size.isBlank()) {
        throw bad(whole);
      }
      sizes.add(lengths.mm("--section", size));
    }
    return sizes;
  }

  private static BadInput bad(String text) {
    return new BadInput("--section", text, "is not a section", ALLOWED);
  }
}
