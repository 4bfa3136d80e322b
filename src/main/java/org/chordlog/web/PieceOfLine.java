package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.LineSnapshot;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.LocalRadius;
import org.chordlog.profile.Part;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.Profile;
import org.chordlog.profile.StoredPiece;
import org.chordlog.radius.Faces;
import org.chordlog.radius.RadiusModel;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.store.Store;
import org.chordlog.web.http.Refusal;

/** A piece that ran through, evaluated once more from what is stored. */
record PieceOfLine(
    Reading reading,
    Job job,
    int passes,
    Profile profile,
    Part part,
    EvaluationSettings settings,
    PieceResult result) {
  private static final int MOST_SPOTS = 400;

  /** Refused where the reading has no profile. */
  static PieceOfLine of(Store store, Reading reading) {
    return find(store, reading)
        .orElseThrow(() -> Refusal.notFound("profile of reading", reading.id()));
  }

  static Optional<PieceOfLine> find(Store store, Reading reading) {
    List<PassedProfile> stored = store.readings().profiles(reading.id());
    if (stored.isEmpty()) {
      return Optional.empty();
    }
    Job job = store.jobs().find(reading.jobId()).orElseThrow();
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    StoredPiece again = StoredPiece.evaluated(stored, model, job.specification());
    return again.outcome() instanceof PieceOutcome.Measured measured
        ? Optional.of(
            new PieceOfLine(
                reading,
                job,
                stored.size(),
                again.profile(),
                measured.part(),
                again.settings(),
                measured.result()))
        : Optional.empty();
  }

  LineSnapshot.Trace trace() {
    List<LineSnapshot.Place> places = new ArrayList<>();
    for (LocalRadius place : result.places()) {
      RadiusEstimate radius = place.radius();
      Double mm = radius.radiusMm();
      Double lower = radius.lowerMm();
      if (mm != null && lower != null) {
        places.add(
            new LineSnapshot.Place(place.placeMm() - part.fromMm(), mm, lower, radius.upperMm()));
      }
    }
    String name = "piece " + reading.piece();
    return new LineSnapshot.Trace(name, spots(profile, settings.model(), part.fromMm()), places);
  }

  /** The radius in each bin, several together where there are many. */
  static List<LineSnapshot.Spot> spots(Profile profile, RadiusModel model, double fromMm) {
    int step = Math.max(1, profile.bins() / MOST_SPOTS);
    List<LineSnapshot.Spot> spots = new ArrayList<>();
    for (int i = 0; i < profile.bins(); i += step) {
      if (profile.count(i) > 0) {
        spots.add(
            new LineSnapshot.Spot(
                profile.placeMm(i) - fromMm, radiusMm(model, profile.depthNm(i))));
      }
    }
    return spots;
  }

  private static double radiusMm(RadiusModel model, long depthNm) {
    SetUp setUp = model.setUp();
    try {
      double bend = model.bendPerMm(depthNm);
      return bend <= 0
          ? Double.POSITIVE_INFINITY
          : Faces.convertMm(1 / bend, setUp.section(), setUp.measuredFace(), setUp.specifiedFace());
    } catch (BadInput e) {
      return Double.POSITIVE_INFINITY;
    }
  }

  static LineSnapshot.Profiles profiles(List<LineSnapshot.Trace> traces, Specification asked) {
    return new LineSnapshot.Profiles(
        traces, asked.targetMm(), asked.lowerLimitMm(), asked.upperLimitMm());
  }

  /** A source of pictures with nothing else. */
  record Only(LineSnapshot snapshot) implements ChartSource {
    @Override
    public Optional<ChartSnapshot> chart(ChartKind kind) {
      return Optional.empty();
    }

    @Override
    public Optional<LineSnapshot> line() {
      return Optional.of(snapshot);
    }
  }
}
