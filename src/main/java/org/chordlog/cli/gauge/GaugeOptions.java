package org.chordlog.cli.gauge;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.SectionText;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The bridge's feet, the indicator, the section and the faces, as options. */
final class GaugeOptions {
  private static final double RESOLUTION_MM = 0.01;
  private static final double PERMISSIBLE_ERROR_MM = 0.02;

  @Mixin LengthOptions lengths = new LengthOptions();

  @Option(names = "--foot-radius", paramLabel = "L", description = "Radius of the feet (0: edges).")
  private @Nullable String footRadius;

  @Option(
      names = "--foot-radius-uncertainty",
      paramLabel = "L",
      description = "Its standard uncertainty (0).")
  private @Nullable String footRadiusUncertainty;

  @Option(
      names = "--feet",
      paramLabel = "KIND",
      description = {
        "What the feet are: point, ball, across (edge or roller across the piece) or"
            + " along (edge along it); matters with --skew, and without it points are taken."
      })
  private @Nullable FootKind feet;

  @Option(
      names = "--span-uncertainty",
      paramLabel = "L",
      description = "Standard uncertainty of the span (0).")
  private @Nullable String spanUncertainty;

  @Option(
      names = "--skew",
      paramLabel = "DEGREES",
      defaultValue = "0",
      description = "How far (±) the bridge may stand turned out of the bend plane (0).")
  private double skewDegrees;

  @Option(
      names = "--resolution",
      paramLabel = "L",
      description = "Step of the indicator (0.01 mm).")
  private @Nullable String resolution;

  @Option(
      names = "--permissible-error",
      paramLabel = "L",
      description = "Permissible error (±) of the indicator (0.02 mm).")
  private @Nullable String permissibleError;

  @Option(
      names = "--travel",
      paramLabel = "L",
      description = "Travel of the indicator (radius: no bound; span: 25 mm).")
  private @Nullable String travel;

  @Option(
      names = "--face",
      paramLabel = "FACE",
      defaultValue = "outer",
      description = "Face the bridge stands on: outer or inner (${DEFAULT-VALUE}).")
  private Face face = Face.OUTER;

  @Option(
      names = "--specified-face",
      paramLabel = "FACE",
      description = "Face the radius is for: outer, inner or centreline (as --face).")
  private @Nullable Face specifiedFace;

  @Option(
      names = "--section",
      paramLabel = "SECTION",
      description = {"Needed for another face or a skew:", SectionText.ALLOWED + "."})
  private @Nullable String section;

  Bridge bridge(double spanMm) {
    return new Bridge(
            0,
            "span " + lengths.stated(spanMm),
            new Bridge.Span(spanMm, lengths.mm("--span-uncertainty", spanUncertainty, 0)),
            new Bridge.Feet(
                lengths.mm("--foot-radius", footRadius, 0),
                lengths.mm("--foot-radius-uncertainty", footRadiusUncertainty, 0),
                feet),
            Check.within("--skew", skewDegrees, 0, 45))
        .possible();
  }

  Indicator indicator(double travelMm) {
    return new Indicator(
        lengths.mm("--resolution", resolution, RESOLUTION_MM),
        lengths.mm("--permissible-error", permissibleError, PERMISSIBLE_ERROR_MM),
        lengths.mm("--travel", travel, travelMm));
  }

  Face measured() {
    if (face == Face.CENTRELINE) {
      throw new BadInput("--face", "centreline", "can't carry a bridge", "outer or inner");
    }
    return face;
  }

  Face specified() {
    return specifiedFace == null ? face : specifiedFace;
  }

  /** Without a section only the face itself can be asked for, whose result does not use one. */
  Section section() {
    if (section != null) {
      return SectionText.parse(section, lengths);
    }
    if (specified() != measured() || skewDegrees > 0) {
      String problem = "is needed for another face or a skew";
      throw new BadInput("--section", "", problem, SectionText.ALLOWED);
    }
    return new Section.Flat(1, 1);
  }

  /**
   * The set-up of a bridge with that span, which is also the longest travel where none is given.
   */
  SetUp setUp(String span) {
    double spanMm = lengths.mm("--span", span);
    return new SetUp(
        bridge(spanMm), indicator(spanMm), null, null, section(), measured(), specified());
  }

  String sectionText() {
    return section == null ? "any" : section + " " + lengths.sign();
  }

  boolean hasSection() {
    return section != null;
  }
}
