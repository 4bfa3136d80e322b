package org.chordlog.profile;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.Refused.Reason;
import org.jspecify.annotations.Nullable;

/**
 * Finds the evaluated length of a piece: behind the tilt of the bridge at the ends, the straight
 * ends, and half a span beyond each rise.
 */
final class ZoneFinder {
  private static final double LEAST_MARGIN_MM = 10;
  private static final double DELAY_SECONDS = 0.02;
  private static final double SPEED_TOLERANCE = 0.03;
  private static final int LEAST_BINS = 6;

  private final EvaluationSettings settings;
  private final double halfSpanMm;
  private final double widthMm;
  private final Part part;
  private final double marginMm;
  private final double fromMm;
  private final double toMm;
  private final Curve curve;

  private ZoneFinder(Profile profile, Part part, EvaluationSettings settings) {
    this.settings = settings;
    this.part = part;
    halfSpanMm = settings.halfSpanMm();
    widthMm = profile.facts().widthMm();
    double least = Math.max(LEAST_MARGIN_MM, widthMm);
    boolean stated = settings.source() == LengthSource.SPEED;
    marginMm = stated ? Math.max(least, SPEED_TOLERANCE * part.lengthMm()) : least;
    double unsure = 2 * widthMm + DELAY_SECONDS * profile.facts().feedMmPerSecond();
    fromMm = part.openStart() ? part.fromMm() : part.fromMm() + halfSpanMm + unsure;
    toMm = part.openEnd() ? part.toMm() : part.toMm() - halfSpanMm - unsure;
    curve = Curve.of(profile, settings.model(), fromMm, toMm);
  }

  /** Refuses a piece that is too short, straight, or nowhere evenly bent. */
  static Zone find(Profile profile, Part part, EvaluationSettings settings) {
    return new ZoneFinder(profile, part, settings).zone();
  }

  /** Half of the bend that the piece has along most of its length, the level of its edges. */
  static double halfLevel(Curve curve) {
    return curve.percentile(0.8) / 2;
  }

  private Zone zone() {
    checkLength();
    double half = halfLevel(curve);
    checkBend(2 * half);
    @Nullable Edge start = part.openStart() ? null : start(half);
    @Nullable Edge end = part.openEnd() ? null : end(half);
    Zone zone = new Zone(from(start), to(end), start, end);
    if (zone.lengthMm() < 2 * Windows.lengthMm(halfSpanMm, widthMm)
        || curve.between(zone.fromMm(), zone.toMm()).size() < 4) {
      throw new NoReading(
          Reason.NO_FULL_BEND,
          Sentence.of(
              "Nowhere is the piece evenly bent for longer than the bridge needs: from %s to %s.",
              Quantity.fixed(zone.fromMm(), 0), Quantity.fixed(zone.toMm(), 0)));
    }
    return zone;
  }

  private void checkLength() {
    if (part.lengthMm() < 2 * halfSpanMm + 4 * widthMm || curve.size() < LEAST_BINS) {
      throw new NoReading(
          Reason.PIECE_TOO_SHORT,
          Sentence.of(
              "The piece is %s long, too short for a span of %s; a span of %s or less would do.",
              Quantity.fixed(part.lengthMm(), 0),
              Quantity.fixed(2 * halfSpanMm, 0),
              Quantity.fixed(part.lengthMm() / 2, 0)));
    }
  }

  private void checkBend(double levelPerMm) {
    boolean flat;
    try {
      long depthNm = settings.model().depthNmOfBend(levelPerMm);
      flat = settings.model().estimateOfMean(depthNm, 0, 0).flat();
    } catch (BadInput refusal) {
      throw new NoReading(refusedBend(levelPerMm), refusal.said());
    }
    if (flat) {
      throw new NoReading(
          Reason.NO_BEND, Sentence.plain("The piece is straight, as far as can be told."));
    }
  }

  private static Reason refusedBend(double levelPerMm) {
    return levelPerMm < 0 ? Reason.WRONG_FACE : Reason.OUTSIDE_TRAVEL;
  }

  private Edge start(double half) {
    int i = 0;
    while (curve.bendPerMm[i] <= half) {
      i++;
    }
    return i == 0
        ? EdgeFit.hidden(curve, halfSpanMm, true, fromMm)
        : EdgeFit.seen(curve, halfSpanMm, true, crossing(i - 1, i, half));
  }

  private Edge end(double half) {
    int i = curve.size() - 1;
    while (curve.bendPerMm[i] <= half) {
      i--;
    }
    return i == curve.size() - 1
        ? EdgeFit.hidden(curve, halfSpanMm, false, toMm)
        : EdgeFit.seen(curve, halfSpanMm, false, crossing(i, i + 1, half));
  }

  private double crossing(int i, int j, double half) {
    double share = (half - curve.bendPerMm[i]) / (curve.bendPerMm[j] - curve.bendPerMm[i]);
    return curve.placeMm[i] + share * (curve.placeMm[j] - curve.placeMm[i]);
  }

  /** By the edge and by the length known, the later one, so that nothing straight comes in. */
  private double from(@Nullable Edge edge) {
    if (edge == null) {
      return fromMm;
    }
    double fitted = edge.placeMm() + full(edge.riseMm());
    Double lead = settings.lengths().leadInMm();
    double known = lead == null ? fromMm : part.fromMm() + lead + full(knownRiseMm());
    return Math.max(fromMm, Math.max(fitted, known));
  }

  private double to(@Nullable Edge edge) {
    if (edge == null) {
      return toMm;
    }
    double fitted = edge.placeMm() - full(edge.riseMm());
    Double lead = settings.lengths().leadOutMm();
    double known = lead == null ? toMm : part.toMm() - lead - full(knownRiseMm());
    return Math.min(toMm, Math.min(fitted, known));
  }

  /** From the middle of a rise to where the bridge stands on the full bend alone. */
  private double full(double riseMm) {
    return riseMm / 2 + halfSpanMm + marginMm;
  }

  private double knownRiseMm() {
    Double rise = settings.lengths().riseMm();
    return rise == null ? 0 : rise;
  }
}
