package org.chordlog.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Store;

/** Pieces of an order, each reading computed as a station would, with the samples it rests on. */
final class Pieces {
  private static final double PIECE_SD_MM = 0.5;
  private static final double PLACE_SD_MM = 0.8;
  private static final int SAMPLES = 40;
  private static final int FIRST_TAKEN = 18;
  private static final int LAST_TAKEN = 29;
  private static final long SAMPLE_NANOS = 50_000_000L;
  private static final int TRACED = 1_000;

  private final Store store;
  private final Job job;
  private final Order order;
  private final SetUp setUp;
  private final RadiusModel model;
  private final long setUpId;
  private final Random random = new Random(11);
  private double ofPiece;

  Pieces(Store store, Job job, Order order, SetUp setUp) {
    this.store = store;
    this.job = job;
    this.order = order;
    this.setUp = setUp;
    this.model = RadiusModel.of(setUp);
    this.setUpId = store.readings().keep(setUp);
  }

  CompletableFuture<Reading> take(long sequence, int index, long atMicros) {
    int positions = order.positions().size();
    int piece = index / positions + 1;
    if (index % positions == 0) {
      ofPiece = PIECE_SD_MM * random.nextGaussian();
    }
    double radius =
        order.targetMm()
            + order.level().offsetMm(piece)
            + ofPiece
            + PLACE_SD_MM * random.nextGaussian();
    long depthNm = Length.nm(Math.round(model.depthForMm(radius) * 1000) / 1000.0);
    long zeroNm = setUp.zero() == null ? 0 : setUp.zero().valueNm();
    long first = sequence * SAMPLES;
    if (index < TRACED) {
      trace(first, depthNm + zeroNm, atMicros);
    }
    CapturedDepth captured =
        new CapturedDepth(
            CaptureMode.SETTLED,
            depthNm + zeroNm,
            400,
            LAST_TAKEN - FIRST_TAKEN + 1,
            new CapturedDepth.SampleRange(first + FIRST_TAKEN, first + LAST_TAKEN),
            new CapturedDepth.Moment((first + LAST_TAKEN) * SAMPLE_NANOS, atMicros));
    RadiusEstimate estimate = model.estimate(depthNm, 400, captured.sampleCount());
    return store
        .readings()
        .append(
            new Reading(
                0,
                new Reading.Source(
                    job.station(), sequence, ClockState.STEADY, "2b30322e3736300d0a"),
                new Reading.Place(job.id(), piece, order.positions().get(index % positions)),
                new Reading.Measured(captured, depthNm, setUpId),
                new Reading.Result(estimate, model.decide(estimate, job.specification()), Set.of()),
                Circumstances.UNRECORDED));
  }

  /** Free air, approach, rest, lifted off. */
  private void trace(long first, long restNm, long atMicros) {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < SAMPLES; i++) {
      double on = i < 8 ? 0 : i < 16 ? (i - 8) / 8.0 : i < 32 ? 1 : Math.max(0, 1 - (i - 32) / 4.0);
      long value = Math.round(-4_000_000 + on * (restNm + 4_000_000) + 400 * random.nextGaussian());
      long wall = atMicros + (i - LAST_TAKEN) * SAMPLE_NANOS / 1_000;
      samples.add(new Sample(first + i, (first + i) * SAMPLE_NANOS, wall, value, 1, false));
    }
    store.traces().append(job.station(), samples);
  }
}
