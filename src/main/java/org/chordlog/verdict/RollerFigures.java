package org.chordlog.verdict;

import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one roller: the wavelength of its ripple along the face that lengths are
 * measured on, and why it can't be seen, null if it can; its amplitude on the piece, percent of
 * curvature, with its expanded uncertainty (coverage factor 2) and the probability that chance
 * alone makes as much; for how many pieces its chart has been above its limit.
 */
public record RollerFigures(
    Roller roller,
    @Nullable Double wavelengthMm,
    @Nullable Sentence unseen,
    @Nullable Double amplitudePercent,
    @Nullable Double uncertaintyPercent,
    @Nullable Double probability,
    long aboveLimitFor) {
  static RollerFigures of(
      Roller roller, @Nullable RollerVerdict verdict, @Nullable RollerTrend trend) {
    RollerSight sight = verdict == null ? null : verdict.sight(roller);
    RollerRipple ripple = verdict == null ? null : verdict.ripple(roller);
    boolean other = verdict != null && isAnother(verdict, roller);
    return new RollerFigures(
        roller,
        sight == null ? null : (Double) sight.wavelengthMm(),
        sight == null ? null : sight.unseen(),
        ripple == null ? null : amplitude(ripple, other ? trend : null),
        ripple == null ? null : uncertainty(ripple, other ? trend : null),
        ripple == null || other ? null : (Double) ripple.probability(),
        trend == null ? 0 : trend.beyondFor());
  }

  /** What a named roller's ripple leaves in the bands of the others is taken out in the trends. */
  private static boolean isAnother(RollerVerdict verdict, Roller roller) {
    return verdict.finding() instanceof Finding.Named named && !named.roller().equals(roller);
  }

  private static Double amplitude(RollerRipple ripple, @Nullable RollerTrend trend) {
    return trend == null ? ripple.amplitudePercent() : trend.amplitudePercent();
  }

  private static Double uncertainty(RollerRipple ripple, @Nullable RollerTrend trend) {
    return 2 * (trend == null ? ripple.uncertaintyPercent() : trend.uncertaintyPercent());
  }
}
