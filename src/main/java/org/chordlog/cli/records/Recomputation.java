package org.chordlog.cli.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.profile.MeanBend;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.StoredPiece;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Readings;
import org.jspecify.annotations.Nullable;

/** Computes readings again and notes each figure that differs from the stored one. */
final class Recomputation {
  private static final int PAGE = 1_000;

  /** A figure that differs, by the name of its column in exported readings. */
  record Difference(long readingId, String figure, String kept, String recomputed) {
    @Override
    public String toString() {
      return "reading "
          + readingId
          + ": "
          + figure
          + " is "
          + kept
          + ", comes out as "
          + recomputed;
    }
  }

  private final Readings readings;
  private final int shown;
  private final Map<Long, RadiusModel> models = new HashMap<>();
  private final List<Difference> first = new ArrayList<>();
  private long differing;

  Recomputation(Readings readings, int shown) {
    this.readings = readings;
    this.shown = shown;
  }

  /** Readings that differ. */
  long differing() {
    return differing;
  }

  List<Difference> first() {
    return first;
  }

  /** All readings of a job, or of all jobs; how many. */
  long run(@Nullable Long jobId) {
    long afterId = 0;
    long count = 0;
    List<Reading> page;
    do {
      page = jobId == null ? readings.all(afterId, PAGE) : readings.ofJob(jobId, afterId, PAGE);
      for (Reading reading : page) {
        look(reading);
        afterId = reading.id();
      }
      count += page.size();
    } while (page.size() == PAGE);
    return count;
  }

  private void look(Reading reading) {
    List<Difference> found = differences(reading);
    if (!found.isEmpty()) {
      differing++;
      found.stream().limit(shown - first.size()).forEach(first::add);
    }
  }

  private List<Difference> differences(Reading reading) {
    List<Difference> found = new ArrayList<>();
    try {
      RadiusModel model = models.computeIfAbsent(reading.setUpId(), this::model);
      if (reading.captured().mode() == CaptureMode.PASSING) {
        alongThePiece(found, reading, model);
        return found;
      }
      var captured = reading.captured();
      long depthNm = captured.valueNm() - zeroNm(model.setUp());
      RadiusEstimate radius = model.estimate(depthNm, captured.scatterNm(), captured.sampleCount());
      compare(found, reading, "depth_nm", reading.depthNm(), depthNm);
      compare(found, reading, radius);
    } catch (BadInput e) {
      found.add(nothing(reading, e.said().toString()));
    }
    return found;
  }

  /** The mean along a piece that ran through, from the profile stored with it. */
  private void alongThePiece(List<Difference> found, Reading reading, RadiusModel model) {
    List<PassedProfile> profiles = readings.profiles(reading.id());
    if (profiles.isEmpty()) {
      found.add(new Difference(reading.id(), "profile", "nothing", "it is missing"));
      return;
    }
    PieceOutcome outcome = StoredPiece.evaluated(profiles, model, null).outcome();
    if (!(outcome instanceof PieceOutcome.Measured measured)) {
      found.add(nothing(reading, ((PieceOutcome.NotMeasured) outcome).why().detail().toString()));
      return;
    }
    MeanBend mean = measured.result().mean();
    long valueNm = mean.depthNm() + zeroNm(model.setUp());
    compare(found, reading, "value_nm", reading.captured().valueNm(), valueNm);
    compare(found, reading, "scatter_nm", reading.captured().scatterNm(), mean.scatterNm());
    compare(found, reading, "depth_nm", reading.depthNm(), mean.depthNm());
    compare(found, reading, mean.radius());
  }

  private static Difference nothing(Reading reading, String why) {
    String kept = orNone(reading.radius().radiusMm()).toString();
    return new Difference(reading.id(), "radius_mm", kept, "nothing: " + why);
  }

  private static void compare(List<Difference> found, Reading reading, RadiusEstimate recomputed) {
    Map<String, Object> now = figures(recomputed);
    figures(reading.radius())
        .forEach((figure, kept) -> compare(found, reading, figure, kept, orNone(now.get(figure))));
  }

  private static Map<String, Object> figures(RadiusEstimate of) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("radius_mm", orNone(of.radiusMm()));
    figures.put("lower_mm", of.lowerMm());
    figures.put("upper_mm", orNone(of.upperMm()));
    figures.put("curvature_per_mm", of.curvaturePerMm());
    figures.put("standard_uncertainty_per_mm", of.standardUncertaintyPerMm());
    figures.put("coverage_factor", of.coverageFactor());
    figures.put("degrees_of_freedom", of.degreesOfFreedom());
    return figures;
  }

  private static Object orNone(@Nullable Object value) {
    return value == null ? "none" : value;
  }

  /** Doubles are equal when every bit is. */
  private static void compare(
      List<Difference> found, Reading reading, String figure, Object kept, Object recomputed) {
    if (!kept.equals(recomputed)) {
      found.add(new Difference(reading.id(), figure, kept.toString(), recomputed.toString()));
    }
  }

  private static long zeroNm(SetUp setUp) {
    Zero zero = setUp.zero();
    return zero == null ? 0 : zero.valueNm();
  }

  private RadiusModel model(long setUpId) {
    return readings
        .setUp(setUpId)
        .map(RadiusModel::of)
        .orElseThrow(
            () -> new BadInput("setUpId", setUpId, "does not exist", "the number of a set-up"));
  }
}
