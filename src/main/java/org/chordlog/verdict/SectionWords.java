package org.chordlog.verdict;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Section;

/** A section in words, its lengths as short as they were given. */
public record SectionWords(Lengths lengths) {
  private static final int DECIMALS = 6;

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
      text.append(text.isEmpty() ? "" : " × ").append(plain(each));
    }
    return text + " " + lengths.symbol();
  }

  private String size(double mm) {
    return plain(mm) + " " + lengths.symbol();
  }

  private String plain(double mm) {
    BigDecimal nanometres = BigDecimal.valueOf(mm).multiply(scale(LengthUnit.MM));
    BigDecimal given = nanometres.divide(scale(lengths.unit()), DECIMALS, RoundingMode.HALF_EVEN);
    return given.signum() == 0 ? "0" : given.stripTrailingZeros().toPlainString();
  }

  private static BigDecimal scale(LengthUnit unit) {
    return BigDecimal.valueOf(unit.nanometres());
  }
}
