package org.chordlog.web;

import java.util.List;
import java.util.Objects;
import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.correction.closing.Ring;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.monitor.MeasuredPieces;
import org.chordlog.radius.Faces;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** How a piece of a job closes, where its developed length or angle is known. */
final class ClosingRoutes {
  private static final double FULL_TURN = 360;

  /** An angle that near a full turn is one, degrees. */
  private static final double NEAR_FULL = 0.05;

  private final Store store;

  ClosingRoutes(Store store) {
    this.store = store;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/closing", "How the newest piece of a ring or an arc closes")
            .answers(ClosingView.class, this::closing),
        Route.get(
                "/api/jobs/{job}/closing/radius", "The radius that something measured on it shows")
            .query("feature", "string", "one of those that the closing has")
            .query("measuredMm", "number", "what was measured; a gap that overlaps is below 0")
            .query("uncertaintyMm", "number", "its standard uncertainty, 0 if left out")
            .answers(ShownRadiusView.class, this::shown));
  }

  private ClosingView closing(Call call) {
    Job job = developed(store, call);
    Arc arc = arc(job);
    MeasuredPieces newest = MeasuredPieces.newest(store, job, arc.developedMm(), 1);
    if (newest.pieces().isEmpty()) {
      throw Refusal.notFound("piece with a radius in job", job.id());
    }
    BentPiece piece = newest.pieces().get(0);
    ClosingView.Bent bent =
        new ClosingView.Bent(
            Integer.parseInt(piece.name()), piece.radiusMm(), newest.standardUncertaintyMm(piece));
    return full(arc) ? ClosingView.ofRing(arc, bent) : ClosingView.ofArc(arc, bent);
  }

  private ShownRadiusView shown(Call call) {
    Job job = developed(store, call);
    Arc arc = arc(job);
    ClosingFeature feature =
        call.choice("feature", ClosingFeature.class)
            .orElseThrow(
                () -> new BadInput("feature", "", "is missing", Call.names(ClosingFeature.class)));
    double measured = call.number("measuredMm");
    double u = call.optionalNumber("uncertaintyMm").orElse(0.0);
    ClosingView.Shown shown =
        full(arc)
            ? feature.shownBy(Ring.ofDeveloped(arc.developedMm()), measured, u)
            : feature.shownBy(arc, measured, u);
    Face face = job.specification().face();
    return new ShownRadiusView(
        feature,
        measured,
        shown.radiusMm(),
        shown.standardUncertaintyMm(),
        arc.targetMm(),
        face,
        Faces.convertMm(shown.radiusMm(), job.section(), Face.CENTRELINE, face));
  }

  /** The job asked for. A {@link Refusal} where neither its length nor its angle is known. */
  static Job developed(Store store, Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    if (askedDegrees(job) == null) {
      throw Refusal.notFound("developed length or angle of job", job.id());
    }
    return job;
  }

  private static boolean full(Arc arc) {
    return fullTurn(Math.toDegrees(arc.angleRadians()));
  }

  static boolean fullTurn(double degrees) {
    return degrees > FULL_TURN - NEAR_FULL;
  }

  /** What the developed length or else the angle asks for; null where the job says neither. */
  static @Nullable Double askedDegrees(Job job) {
    Double length = job.details().developedLengthMm();
    return length == null
        ? job.details().developedAngleDegrees()
        : (Double) Math.toDegrees(length / targetMm(job));
  }

  /** What is cut to length keeps its length; where only the angle is known, ends are cut to it. */
  static Arc arc(Job job) {
    double degrees = Objects.requireNonNull(askedDegrees(job));
    if (degrees > FULL_TURN + NEAR_FULL) {
      throw new BadInput(
          "developedAngleDegrees",
          degrees,
          "is more than a full turn, which closes nowhere",
          "360");
    }
    Arc.Fixed fixed =
        job.details().developedLengthMm() == null ? Arc.Fixed.ANGLE : Arc.Fixed.LENGTH;
    return Arc.ofDegrees(targetMm(job), Math.min(FULL_TURN, degrees), fixed);
  }

  /** On the centreline. */
  private static double targetMm(Job job) {
    return Faces.convertMm(
        job.specification().targetMm(), job.section(), job.specification().face(), Face.CENTRELINE);
  }
}
