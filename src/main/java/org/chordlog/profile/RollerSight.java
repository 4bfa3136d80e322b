package org.chordlog.profile;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.Faces;
import org.jspecify.annotations.Nullable;

/**
 * What can be seen of a roller's ripple: its wavelength along the face that the length is measured
 * on, the share of it that the bridge shows, and why it can't be told, null if it can.
 */
public record RollerSight(
    Roller roller, double wavelengthMm, double shownShare, @Nullable Sentence unseen) {
  /** By how much a roller may slip, so that its wavelength is another. */
  public static final double SLIP = 0.02;

  private static final double LEAST_SHARE = 0.1;
  private static final double LEAST_VALUES = 8;

  /**
   * Of each roller with a bend of that radius on the measured face, values that far apart (0: not
   * known); can be asked before anything has run through.
   */
  public static List<RollerSight> of(
      List<Roller> rollers, SetUp setUp, Face lengthFace, double measuredRadiusMm, double pitchMm) {
    return rollers.stream()
        .map(roller -> of(roller, 1, setUp, lengthFace, measuredRadiusMm, pitchMm))
        .toList();
  }

  /**
   * The same of a ripple of two waves a turn, as a roller makes that is out of round; not told
   * where another roller makes a ripple of that wavelength once a turn.
   */
  static List<RollerSight> ofTwoWavesATurn(
      List<Roller> rollers, SetUp setUp, Face lengthFace, double measuredRadiusMm, double pitchMm) {
    List<RollerSight> once = of(rollers, setUp, lengthFace, measuredRadiusMm, pitchMm);
    return rollers.stream()
        .map(roller -> of(roller, 2, setUp, lengthFace, measuredRadiusMm, pitchMm))
        .map(twice -> twice.unlessOf(once))
        .toList();
  }

  private RollerSight unlessOf(List<RollerSight> once) {
    for (RollerSight other : once) {
      if (seen() && Math.abs(other.wavelengthMm() / wavelengthMm - 1) < 2 * SLIP) {
        Sentence why = Sentence.of("once a turn %s makes the same ripple", other.roller().name());
        return new RollerSight(roller, wavelengthMm, shownShare, why);
      }
    }
    return this;
  }

  private static RollerSight of(
      Roller roller,
      int wavesATurn,
      SetUp setUp,
      Face lengthFace,
      double measuredRadiusMm,
      double pitchMm) {
    double wave = wavelengthMm(roller, setUp, lengthFace, measuredRadiusMm) / wavesATurn;
    double onFace =
        wavelengthMm(roller, setUp, setUp.measuredFace(), measuredRadiusMm) / wavesATurn;
    double share = Transfer.share(setUp.bridge().spanMm() / 2, onFace);
    return new RollerSight(
        roller, wave, share, unseen(wave, share, setUp.bridge().spanMm(), pitchMm));
  }

  private static double wavelengthMm(
      Roller roller, SetUp setUp, Face along, double measuredRadiusMm) {
    return Math.PI
        * roller.diameterMm()
        * Faces.convertMm(measuredRadiusMm, setUp.section(), setUp.measuredFace(), along)
        / Faces.convertMm(measuredRadiusMm, setUp.section(), setUp.measuredFace(), roller.side());
  }

  private static @Nullable Sentence unseen(
      double wave, double share, double spanMm, double pitchMm) {
    if (share < LEAST_SHARE) {
      return Sentence.of(
          "a span of %s shows only %.1f %% of a ripple of %s",
          Quantity.fixed(spanMm, 0), 100 * share, Quantity.fixed(wave, 0));
    }
    if (wave < LEAST_VALUES * pitchMm) {
      return Sentence.of(
          "values come only every %s, too far apart for a ripple of %s; a vibration could pass for"
              + " it",
          Quantity.fixed(pitchMm, 0), Quantity.fixed(wave, 0));
    }
    return null;
  }

  boolean seen() {
    return unseen == null;
  }
}
