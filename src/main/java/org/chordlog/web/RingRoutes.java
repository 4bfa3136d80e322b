package org.chordlog.web;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.correction.closing.Arc;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.correction.closing.Joining;
import org.chordlog.correction.closing.RingOfPieces;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.monitor.MeasuredPieces;
import org.chordlog.radius.Faces;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;

/** Rings welded of several pieces: what is left to bend, and which pieces to join. */
final class RingRoutes {
  private static final int MOST_PIECES = 9;

  /** So many of the newest pieces can be asked for. */
  private static final int NEWEST = 100;

  private final Store store;

  RingRoutes(Store store) {
    this.store = store;
  }

  List<Route> routes() {
    return List.of(
        Route.get("/api/jobs/{job}/closing/pieces", "The newest pieces that a ring can be made of")
            .answersList(RingView.Bent.class, this::pieces),
        Route.get("/api/jobs/{job}/closing/ring", "A ring welded of several pieces of this job")
            .query("pieces", "integer", "how many it takes, 2 to " + MOST_PIECES)
            .query("bent", "integer", "a piece that is bent; once for each, more to choose from")
            .answers(RingView.class, this::ring));
  }

  private List<RingView.Bent> pieces(Call call) {
    Job job = ClosingRoutes.developed(store, call);
    return newest(job, cutBefore(job)).pieces().stream()
        .limit(MOST_PIECES)
        .map(RingView.Bent::of)
        .toList();
  }

  private RingView ring(Call call) {
    Job job = ClosingRoutes.developed(store, call);
    int count = count(call);
    double each = cutBefore(job);
    MeasuredPieces newest = newest(job, each);
    List<BentPiece> bent = chosen(newest, Set.copyOf(call.ctx().queryParams("bent")));
    return bent.size() < count
        ? unfinished(job, count, each, new RingOfPieces(bent, newest.commonMm(), 0))
        : whole(count, each, bent, newest.commonMm());
  }

  private static int count(Call call) {
    if (call.text("pieces").isEmpty()) {
      throw new BadInput("pieces", "", "is missing", "2 to " + MOST_PIECES);
    }
    return (int) call.query("pieces", 2, 2, MOST_PIECES);
  }

  private static RingView unfinished(Job job, int count, double each, RingOfPieces ring) {
    int left = count - ring.bent().size();
    double radius = ring.closingRadiusMm(left * each);
    Face face = job.specification().face();
    RingView.Rest rest =
        new RingView.Rest(
            left,
            radius,
            ring.closingStandardUncertaintyMm(left * each),
            face,
            Faces.convertMm(radius, job.section(), Face.CENTRELINE, face));
    return RingView.of(count, each, ring, rest, null);
  }

  private static RingView whole(int count, double each, List<BentPiece> bent, double commonMm) {
    Joining.Found found = Joining.best(bent, count);
    RingOfPieces ring = new RingOfPieces(found.order(), commonMm, 0);
    return RingView.of(count, each, ring, null, RingView.Joint.of(ring, found));
  }

  private MeasuredPieces newest(Job job, double developedMm) {
    return MeasuredPieces.newest(store, job, developedMm, NEWEST);
  }

  /** Developed length of each piece. What is cut to its angle afterwards turns by it anyway. */
  private static double cutBefore(Job job) {
    Arc arc = ClosingRoutes.arc(job);
    if (arc.fixed() == Arc.Fixed.ANGLE) {
      throw new BadInput(
          "developedLengthMm",
          "",
          "is missing: pieces whose ends are cut to an angle make a ring at any radius",
          "the length to which each piece is cut before bending");
    }
    return arc.developedMm();
  }

  private static List<BentPiece> chosen(MeasuredPieces newest, Set<String> wanted) {
    List<BentPiece> chosen =
        newest.pieces().stream().filter(each -> wanted.contains(each.name())).toList();
    if (chosen.size() < wanted.size()) {
      Set<String> found = chosen.stream().map(BentPiece::name).collect(Collectors.toSet());
      String missing =
          wanted.stream().filter(each -> !found.contains(each)).sorted().findFirst().orElseThrow();
      throw new BadInput(
          "bent", missing, "is not among the newest pieces with a radius", allowed(newest));
    }
    return chosen;
  }

  private static String allowed(MeasuredPieces newest) {
    return newest.pieces().stream().map(BentPiece::name).collect(Collectors.joining(", "));
  }
}
