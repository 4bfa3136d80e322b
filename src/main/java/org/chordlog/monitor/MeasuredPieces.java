package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.radius.Faces;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Store;

/**
 * The newest pieces of a job, newest first, as they close: the mean of curvature over the positions
 * of the last pass, told as radius on the centreline. {@code commonMm}: standard uncertainty that
 * all radii have in common (zero, span and permissible error of the gauge).
 */
public record MeasuredPieces(List<BentPiece> pieces, double commonMm) {
  private static final int MOST_READINGS = 300;

  public MeasuredPieces {
    pieces = List.copyOf(pieces);
  }

  /** So many at most, those that read flat left out. */
  public static MeasuredPieces newest(Store store, Job job, double developedMm, int most) {
    Observations observations = new Observations(store.readings());
    List<BentPiece> pieces = new ArrayList<>();
    double common = 0;
    for (List<Reading> piece : byPiece(store, job.id())) {
      if (pieces.size() < most) {
        Mean mean = Mean.of(piece, observations);
        pieces.add(mean.piece(job, developedMm));
        common = Math.max(common, mean.commonMm());
      }
    }
    return new MeasuredPieces(pieces, common);
  }

  /** Of one radius: its own share and the common one. */
  public double standardUncertaintyMm(BentPiece piece) {
    return Math.hypot(piece.standardUncertaintyMm(), commonMm);
  }

  private static Collection<List<Reading>> byPiece(Store store, long jobId) {
    Map<Integer, List<Reading>> pieces = new LinkedHashMap<>();
    ReadingQuery newest = ReadingQuery.newest(jobId, MOST_READINGS).excluded(false);
    for (Reading each : store.readings().search(newest)) {
      List<Reading> piece = pieces.computeIfAbsent(each.piece(), number -> new ArrayList<>());
      if (!each.radius().flat() && samePass(piece, each)) {
        piece.add(each);
      }
    }
    pieces.values().removeIf(List::isEmpty);
    return pieces.values();
  }

  private static boolean samePass(List<Reading> piece, Reading each) {
    return piece.isEmpty() || piece.get(0).circumstances().pass() == each.circumstances().pass();
  }

  /** Mean curvature of one piece, 1/mm, with what is its own and what all pieces share. */
  private record Mean(int number, double perMm, double ownPerMm, double commonPerMm) {
    static Mean of(List<Reading> piece, Observations observations) {
      double sum = 0;
      double own = 0;
      double common = 0;
      for (Reading each : piece) {
        RadiusEstimate radius = each.radius();
        double placing = observations.repeatabilityPerMm(each);
        sum += Math.abs(radius.curvaturePerMm());
        own += placing * placing;
        double all = radius.standardUncertaintyPerMm();
        common = Math.max(common, Math.sqrt(Math.max(0, all * all - placing * placing)));
      }
      int count = piece.size();
      return new Mean(piece.get(0).piece(), sum / count, Math.sqrt(own) / count, common);
    }

    BentPiece piece(Job job, double developedMm) {
      Face face = job.specification().face();
      double radius = Faces.convertMm(1 / perMm, job.section(), face, Face.CENTRELINE);
      return new BentPiece(String.valueOf(number), developedMm, radius, ownPerMm / perMm / perMm);
    }

    double commonMm() {
      return commonPerMm / perMm / perMm;
    }
  }
}
