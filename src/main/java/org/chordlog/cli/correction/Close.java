package org.chordlog.cli.correction;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.Arc.Feature;
import org.chordlog.correction.closing.Ring;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How rings and arcs close. */
@Command(
    name = "close",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Tells how a ring or an arc closes at a radius, or which radius a measured gap" + " shows.",
      "Of an arc it tells chord, rise and end offset, or the radius that one of them" + " shows.",
      "Without --angle and --length a full ring is meant.",
      "",
      "With --bent: pieces of a ring (CSV with the columns length and radius; name,"
          + " uncertainty):"
          + " what is left to close, the radius for what is left to bend (--left), or which"
          + " pieces to join (--join)."
    })
public final class Close implements Callable<Integer> {
  /** What is known: the target of an arc or ring, or pieces that are bent. */
  static final class What {
    @Option(names = "--target", paramLabel = "L", required = true, description = "Target radius.")
    private @Nullable String target;

    @Option(names = "--bent", paramLabel = "FILE", required = true, description = "Bent pieces.")
    private @Nullable Path bent;
  }

  /** What is given of the bent arc. */
  static final class Given {
    @Option(names = "--radius", paramLabel = "L", description = "Its radius.")
    private @Nullable String radius;

    @Option(
        names = "--radii",
        paramLabel = "L",
        arity = "2..*",
        description =
            "Radii at places evenly spaced round a ring, the first one half a space from its start.")
    private @Nullable List<String> radii;

    @Option(names = "--gap", paramLabel = "L", description = "Gap of a ring along the arc.")
    private @Nullable String gap;

    @Option(names = "--straight-gap", paramLabel = "L", description = "Straight gap of a ring.")
    private @Nullable String straightGap;

    @Option(names = "--chord", paramLabel = "L", description = "Chord from end to end.")
    private @Nullable String chord;

    @Option(names = "--rise", paramLabel = "L", description = "Rise of the middle over it.")
    private @Nullable String rise;

    @Option(
        names = "--end-offset",
        paramLabel = "L",
        description = "How far one end is off the drawing (outwards: +), the other clamped.")
    private @Nullable String endOffset;
  }

  @Spec private CommandSpec spec;

  @ArgGroup(multiplicity = "1")
  private What what;

  @Mixin private LengthOptions lengths = new LengthOptions();

  @Option(names = "--angle", paramLabel = "DEGREES", description = "Angle of the arc.")
  private @Nullable String angle;

  @Option(names = "--length", paramLabel = "L", description = "Developed length of the arc.")
  private @Nullable String length;

  @Option(
      names = "--cut-after",
      description = "The ends are cut to the angle after bending; else the length is cut before.")
  private boolean cutAfter;

  @ArgGroup private Given given = new Given();

  @Option(
      names = "--uncertainty",
      paramLabel = "L",
      description = "Standard uncertainty of what is given (0).")
  private @Nullable String uncertainty;

  @Mixin private PieceOptions pieces = new PieceOptions();

  @Option(names = "--json", description = "Print JSON; lengths in mm.")
  private boolean json;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    ClosingAnswer answer = answer();
    out.println(json ? JsonText.of(answer) : answer.text(lengths));
    out.flush();
    return ExitCode.WELL;
  }

  private ClosingAnswer answer() {
    Path bent = what.bent;
    try {
      return bent == null ? arc() : pieces.answer(bent, lengths);
    } catch (BadInput refusal) {
      throw lengths.inUnit(refusal);
    }
  }

  private ClosingAnswer arc() {
    double target = lengths.mm("--target", String.valueOf(what.target));
    double u = lengths.mm("--uncertainty", uncertainty, 0);
    return angle == null && length == null ? ring(new Ring(target), u) : arc(arc(target), u);
  }

  private Arc arc(double target) {
    if (angle != null && length != null) {
      throw new BadInput("--angle", angle, "is given beside --length", "one of them");
    }
    Arc.Fixed fixed = cutAfter ? Arc.Fixed.ANGLE : Arc.Fixed.LENGTH;
    return angle == null
        ? Arc.ofDeveloped(target, lengths.mm("--length", String.valueOf(length)))
        : Arc.ofDegrees(target, TypedNumber.of("--angle", angle), fixed);
  }

  private ClosingAnswer ring(Ring ring, double u) {
    if (given.radius != null) {
      return RingAnswer.of(ring, lengths.mm("--radius", given.radius), u);
    }
    if (given.radii != null) {
      List<Double> radii = given.radii.stream().map(each -> lengths.mm("--radii", each)).toList();
      return UnevenRingAnswer.of(ring.targetMm(), radii, u, pieces.commonMm(lengths));
    }
    double perRadius = Ring.gapUncertaintyMm(1);
    if (given.gap != null) {
      double radius = ring.radiusFromArcGapMm(lengths.mm("--gap", given.gap));
      return RingAnswer.of(ring, radius, u / perRadius);
    }
    if (given.straightGap != null) {
      double radius = ring.radiusFromStraightGapMm(lengths.mm("--straight-gap", given.straightGap));
      return RingAnswer.of(ring, radius, u / perRadius);
    }
    throw notOfARing();
  }

  private ClosingAnswer arc(Arc arc, double u) {
    if (given.radius != null) {
      return ArcAnswer.of(arc, lengths.mm("--radius", given.radius), u);
    }
    if (given.chord != null) {
      return measured(arc, Feature.CHORD, lengths.mm("--chord", given.chord), u);
    }
    if (given.rise != null) {
      return measured(arc, Feature.RISE, lengths.mm("--rise", given.rise), u);
    }
    if (given.endOffset != null) {
      return measured(arc, Feature.END_OFFSET, lengths.mm("--end-offset", given.endOffset), u);
    }
    String what = "or something measured on the arc is missing";
    throw new BadInput("--radius", "", what, "--radius, --chord, --rise, --end-offset");
  }

  private BadInput notOfARing() {
    boolean ofAnArc = given.chord != null || given.rise != null || given.endOffset != null;
    return ofAnArc
        ? new BadInput("--angle", "", "or --length of the arc is missing", "one of them")
        : new BadInput(
            "--radius", "", "or a gap is missing", "--radius, --radii, --gap, --straight-gap");
  }

  private static ClosingAnswer measured(Arc arc, Feature feature, double measured, double u) {
    return ArcAnswer.of(arc, radiusMm(arc, feature, measured), arc.radiusUncertaintyMm(feature, u));
  }

  /** A refusal names what was measured. */
  private static double radiusMm(Arc arc, Feature feature, double measured) {
    try {
      return arc.radiusMm(feature, measured);
    } catch (BadInput refusal) {
      String field = feature == Feature.END_OFFSET ? "endOffsetMm" : lower(feature) + "Mm";
      throw new BadInput(
          refusal.faults().stream()
              .map(each -> each.field().equals("measuredMm") ? each.at(field) : each)
              .toList());
    }
  }

  private static String lower(Feature feature) {
    return feature.name().toLowerCase(Locale.ROOT);
  }
}
