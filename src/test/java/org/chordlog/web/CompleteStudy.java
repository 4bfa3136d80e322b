package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Job;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.store.Some;
import org.chordlog.store.Store;

/** A study of three pieces and two operators. */
final class CompleteStudy {
  private CompleteStudy() {}

  /** Puts it straight into the store, as measured on that job's pieces and ended. */
  static void in(Store store, Job job) throws Exception {
    long setUp = store.readings().keep(Some.setUp(store.gauges().bridges().get(0)));
    GaugeStudy study =
        store
            .studies()
            .add(
                new GaugeStudy(
                    0,
                    "A",
                    "hoops in spring",
                    new GaugeStudy.Design(
                        GaugeStudy.Kind.CROSSED,
                        List.of("1", "2", "3"),
                        List.of(),
                        List.of("Ann", "Bo"),
                        2,
                        7),
                    new GaugeStudy.Subject(
                        job.section(), job.measuredFace(), job.specification(), List.of()),
                    GaugeStudy.State.RUNNING,
                    new GaugeStudy.Made(Some.T0, "tester")));
    for (int step = 1; step <= study.design().steps(); step++) {
      var unused = store.studies().add(measurement(study.id(), step, setUp));
    }
    var unused = store.studies().become(study.id(), GaugeStudy.State.DONE, "tester", "");
  }

  private static StudyMeasurement measurement(long study, int step, long setUp) {
    CapturedDepth captured =
        new CapturedDepth(
            CaptureMode.SETTLED,
            2_760_000 + step,
            500,
            12,
            new CapturedDepth.SampleRange(step * 20L, step * 20L + 11),
            new CapturedDepth.Moment(step * 1_000_000_000L, Some.T0 + step));
    double radius = 1800 + 6 * Math.sin(1.7 * step);
    return new StudyMeasurement(
        0,
        study,
        step,
        captured,
        2_760_000 + step,
        new StudyMeasurement.Result(setUp, 1 / radius, 3e-7));
  }
}
