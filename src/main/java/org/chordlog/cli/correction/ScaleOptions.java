package org.chordlog.cli.correction;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.MachineScale.Tighter;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The machine's scale as options; whatever is left out is learned from recorded corrections. */
final class ScaleOptions {
  private static final double HUNDRED = 100;

  @Option(
      names = "--scale",
      paramLabel = "NAME",
      defaultValue = "machine's scale",
      description = "What the scale is called (${DEFAULT-VALUE}).")
  private String name;

  @Option(
      names = "--scale-unit",
      paramLabel = "UNIT",
      defaultValue = "units",
      description = "Its unit, as mm, 0.01 mm, turns (${DEFAULT-VALUE}).")
  private String unit;

  @Option(
      names = "--scale-step",
      paramLabel = "X",
      defaultValue = "0",
      description = "The least difference that can be set (0: not known).")
  private String step;

  @Option(
      names = "--tighter",
      paramLabel = "WHERE",
      description =
          "Where the numbers go when the bend gets tighter: higher, lower or unknown (unknown).")
  private Tighter tighter = Tighter.UNKNOWN;

  @Option(
      names = "--lost-motion",
      paramLabel = "X",
      defaultValue = "0",
      description = "What a reversal loses, in the scale's unit (0: not known).")
  private String lostMotion;

  @Option(
      names = "--move-uncertainty",
      paramLabel = "X",
      description = "Standard uncertainty of a move, in the scale's unit.")
  private @Nullable String moveUncertainty;

  @Option(
      names = "--gain",
      paramLabel = "L",
      description = {
        "Change of the radius at the target for one unit more on the scale;",
        "negative where a higher number is tighter. Left out: learned, its sign too."
      })
  private @Nullable String gain;

  @Option(
      names = "--gain-uncertainty",
      paramLabel = "PERCENT",
      defaultValue = "30",
      description = "Its standard uncertainty, percent (${DEFAULT-VALUE}).")
  private String gainUncertainty;

  @Option(
      names = "--roller-distance",
      paramLabel = "L",
      description = {
        "Instead of --gain: distance of the outer rollers' centres of a pyramid machine"
            + " whose scale moves the middle roller by --unit-mm."
      })
  private @Nullable String rollerDistance;

  @Option(
      names = "--unit-mm",
      paramLabel = "MM",
      defaultValue = "1",
      description =
          "Travel of the middle roller for one unit, always in mm; negative backwards (1).")
  private String unitMm;

  MachineScale scale(double targetMm, LengthOptions lengths) {
    String move = moveUncertainty;
    return new MachineScale(
        name,
        unit,
        TypedNumber.of("--scale-step", step),
        tighter,
        TypedNumber.of("--lost-motion", lostMotion),
        move == null ? null : (Double) TypedNumber.of("--move-uncertainty", move),
        prior(targetMm, lengths));
  }

  private GainPrior prior(double targetMm, LengthOptions lengths) {
    if (gain != null && rollerDistance != null) {
      throw new BadInput("--gain", gain, "is given beside --roller-distance", "one of them");
    }
    if (rollerDistance != null) {
      double half = lengths.mm("--roller-distance", rollerDistance) / 2;
      return GainPrior.ofPyramidRollers(half, TypedNumber.of("--unit-mm", unitMm));
    }
    double relative = TypedNumber.of("--gain-uncertainty", gainUncertainty) / HUNDRED;
    return gain == null
        ? GainPrior.unknown()
        : GainPrior.ofRadiusChange(changeMm(gain, lengths), targetMm, relative);
  }

  private static double changeMm(String gain, LengthOptions lengths) {
    double change = lengths.mm("--gain", gain);
    if (change == 0) {
      throw new BadInput("--gain", gain, "would change nothing", "a number above or below 0");
    }
    return change;
  }
}
