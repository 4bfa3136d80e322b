package org.chordlog.web;

import java.util.List;
import java.util.Objects;
import org.chordlog.correction.closing.Arc;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.radius.Faces;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** How a piece of a job closes, where its developed length or angle is known. */
final class ClosingRoutes {
  private static final double FULL_TURN = 360;

  /** An angle that near a full turn is one, degrees. */
  private static final double NEAR_FULL = 0.05;

  private static final int MOST_READINGS = 100;
  private final Store store;

  ClosingRoutes(Store store) {
    this.store = store;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/closing", "How the newest piece of a ring or an arc closes")
            .answers(ClosingView.class, this::closing));
  }

  private ClosingView closing(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    OrderDetails details = job.details();
    if (details.developedLengthMm() == null && details.developedAngleDegrees() == null) {
      throw Refusal.notFound("developed length or angle of job", job.id());
    }
    List<Reading> newest =
        store.readings().search(RecentRoutes.counted(job.id(), MOST_READINGS)).stream()
            .filter(each -> each.radius().radiusMm() != null)
            .toList();
    if (newest.isEmpty()) {
      throw Refusal.notFound("piece with a radius in job", job.id());
    }
    Arc arc = arc(job, details);
    ClosingView.Bent bent = bent(job, newest);
    boolean full = Math.toDegrees(arc.angleRadians()) > FULL_TURN - NEAR_FULL;
    return full ? ClosingView.ofRing(arc, bent) : ClosingView.ofArc(arc, bent);
  }

  /** What is cut to length keeps its length; where only the angle is known, ends are cut to it. */
  private static Arc arc(Job job, OrderDetails details) {
    double target =
        Faces.convertMm(
            job.specification().targetMm(),
            job.section(),
            job.specification().face(),
            Face.CENTRELINE);
    Double length = details.developedLengthMm();
    Double angle = details.developedAngleDegrees();
    double degrees =
        length == null ? Objects.requireNonNull(angle) : Math.toDegrees(length / target);
    if (degrees > FULL_TURN + NEAR_FULL) {
      throw new BadInput(
          "developedAngleDegrees",
          degrees,
          "is more than a full turn, which closes nowhere",
          "360");
    }
    Arc.Fixed fixed = length == null ? Arc.Fixed.ANGLE : Arc.Fixed.LENGTH;
    return Arc.ofDegrees(target, Math.min(FULL_TURN, degrees), fixed);
  }

  /** The newest piece in its last pass: the mean of curvature, which is what closes. */
  private static ClosingView.Bent bent(Job job, List<Reading> newestFirst) {
    Reading last = newestFirst.get(0);
    List<RadiusEstimate> piece =
        newestFirst.stream()
            .filter(each -> each.piece() == last.piece())
            .filter(each -> each.circumstances().pass() == last.circumstances().pass())
            .map(Reading::radius)
            .toList();
    double curvature =
        piece.stream().mapToDouble(each -> Math.abs(each.curvaturePerMm())).average().orElseThrow();
    double u =
        piece.stream().mapToDouble(RadiusEstimate::standardUncertaintyPerMm).max().orElseThrow();
    double radius = 1 / curvature;
    double centreline =
        Faces.convertMm(radius, job.section(), job.specification().face(), Face.CENTRELINE);
    return new ClosingView.Bent(last.piece(), centreline, u * radius * radius);
  }
}
