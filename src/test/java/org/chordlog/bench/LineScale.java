package org.chordlog.bench;

import java.util.List;
import org.chordlog.profile.LocalRadius;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.Zone;

/** A result whose places came by a wrong feed, at the true places. */
final class LineScale {
  private LineScale() {}

  /** {@code startMm} is where the piece truly was as touch began. */
  static PieceOutcome scaled(PieceOutcome outcome, double startMm, double factor) {
    if (!(outcome instanceof Measured measured)) {
      return outcome;
    }
    PieceResult result = measured.result();
    Zone zone =
        new Zone(
            result.zone().fromMm() / factor + startMm,
            result.zone().toMm() / factor + startMm,
            result.zone().start(),
            result.zone().end());
    List<LocalRadius> places =
        result.places().stream()
            .map(
                p ->
                    new LocalRadius(
                        p.placeMm() / factor + startMm, p.radius(), p.decision(), p.marked()))
            .toList();
    return new Measured(
        measured.part(),
        new PieceResult(
            zone,
            result.mean(),
            result.uniformity(),
            result.windowMm() / factor,
            places,
            result.inside(),
            result.marks()));
  }
}
