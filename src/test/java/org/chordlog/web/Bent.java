package org.chordlog.web;

import java.util.List;
import java.util.Set;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Job;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Some;

/** Pieces of about R 1800 at three positions, put into the store of a service as measured. */
final class Bent {
  static final List<String> POSITIONS = List.of("start", "middle", "end");
  private static final long SECONDS = 1_000_000;

  private final Served served;
  private final SetUp setUp;
  private final RadiusModel model;
  private final long setUpId;

  /** Of all pieces so far, whichever job they are of: so they are the same in another order. */
  private int bent;

  Bent(Served served) {
    this.served = served;
    setUp = Some.setUp(served.store.gauges().bridges().get(0));
    model = RadiusModel.of(setUp);
    setUpId = served.store.readings().keep(setUp);
  }

  /** The next piece bent, numbered so in that job. */
  void piece(Job job, int number) {
    piece(job, number, 1);
  }

  void piece(Job job, int number, int pass) {
    bent++;
    for (int i = 0; i < POSITIONS.size(); i++) {
      at(job, number, i, pass);
    }
  }

  private void at(Job job, int number, int position, int pass) {
    long sequence = served.store.readings().lastSequence("A") + 1;
    long depthNm = 2_760_000 + (bent * 7919L) % 9_000 + position * 700L;
    CapturedDepth captured =
        new CapturedDepth(
            CaptureMode.SETTLED,
            depthNm - 12_340_000,
            1_500,
            12,
            new CapturedDepth.SampleRange(sequence * 40, sequence * 40 + 12),
            new CapturedDepth.Moment(
                bent * 90_000_000_000L + position,
                Some.T0 + (bent * 90L + position * 9L) * SECONDS));
    RadiusEstimate radius = model.estimate(depthNm, captured.scatterNm(), captured.sampleCount());
    served
        .store
        .readings()
        .append(
            new Reading(
                0,
                new Reading.Source("A", sequence, ClockState.STEADY, "2b30322e3736300d0a"),
                new Reading.Place(job.id(), number, POSITIONS.get(position)),
                new Reading.Measured(captured, depthNm, setUpId),
                new Reading.Result(radius, model.decide(radius, job.specification()), Set.of()),
                Circumstances.UNRECORDED
                    .withPass(pass)
                    .withRevision(job.revision())
                    .withMeasuredBy("Ann")
                    .withMaterialLot(served.store.jobs().materialLot(job.id()).orElseThrow())))
        .join();
  }
}
