package org.chordlog.station;

import java.util.EnumSet;
import java.util.Set;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Turns a captured depth into a reading of the active job, or says why it can't. */
final class ReadingMaker {
  /** What came of a captured depth. */
  sealed interface Result {
    record Made(Reading reading) implements Result {}

    record Refused(Rejected rejection) implements Result {}
  }

  private static final String FLAT =
      "no bend can be told from a flat here; where each lift says so, the indicator counts the other"
          + " way than the station's settings say";

  private final ZeroRule zeroRule;

  ReadingMaker(ZeroRule zeroRule) {
    this.zeroRule = zeroRule;
  }

  /** {@code along} is what was found along a piece that ran through; null for a single depth. */
  Result make(
      CapturedDepth depth,
      WorkSnapshot work,
      Place place,
      Reading.Source source,
      boolean zeroMoved,
      @Nullable Along along) {
    @Nullable Job job = work.job();
    WorkSnapshot.@Nullable Computed computed = work.computed();
    if (job == null) {
      return refuse(depth, Reason.NO_JOB, "select a job for this station");
    }
    if (job.state() == Job.State.CLOSED) {
      return refuse(depth, Reason.JOB_CLOSED, "select the next job for this station");
    }
    if (computed == null) {
      return refuse(depth, Reason.NO_BRIDGE, "say which bridge is on this station");
    }
    @Nullable Result noZero = withoutZero(depth, work);
    if (noZero != null) {
      return noZero;
    }
    long depthNm = depth.valueNm() - work.zeroNm();
    try {
      RadiusEstimate radius =
          along == null
              ? computed.model().estimate(depthNm, depth.scatterNm(), depth.sampleCount())
              : along.radius();
      if (radius.flat()) {
        return refuse(depth, Reason.FLAT, FLAT);
      }
      Decision decision =
          along == null ? computed.model().decide(radius, job.specification()) : along.decision();
      Set<Mark> marks = marks(work, depth.wallMicros(), source.clock(), zeroMoved);
      return new Result.Made(
          new Reading(
              0,
              source,
              new Reading.Place(job.id(), place.piece(), place.position()),
              new Reading.Measured(depth, depthNm, computed.setUpId()),
              new Reading.Result(radius, decision, marks),
              circumstances(job, place, work.shift())));
    } catch (BadInput e) {
      return refuse(depth, reasonOf(depthNm, job.measuredFace()), e.said());
    }
  }

  /** A refusal for want of a zero that the rule accepts; null where there is one. */
  private @Nullable Result withoutZero(CapturedDepth depth, WorkSnapshot work) {
    @Nullable Reason lacks = work.zeroLacks(zeroRule, depth.wallMicros());
    if (lacks == null) {
      return null;
    }
    boolean never = lacks == Reason.NOT_ZEROED;
    return refuse(
        depth, lacks, never ? "take the zero on a flat" : "take the zero on a flat again");
  }

  private static Circumstances circumstances(Job job, Place place, WorkSnapshot.Shift shift) {
    return Circumstances.UNRECORDED
        .withPass(place.pass())
        .withRevision(job.revision())
        .withMeasuredBy(shift.person())
        .withMaterialLot(shift.materialLot());
  }

  private static Result refuse(CapturedDepth depth, Reason reason, String detail) {
    return refuse(depth, reason, Sentence.plain(detail));
  }

  private static Result refuse(CapturedDepth depth, Reason reason, Sentence detail) {
    return new Result.Refused(new Rejected(reason, depth.monotonicNanos(), detail));
  }

  private static Reason reasonOf(long depthNm, Face face) {
    boolean convex = depthNm > 0;
    return convex == (face == Face.OUTER) ? Reason.OUTSIDE_TRAVEL : Reason.WRONG_FACE;
  }

  private Set<Mark> marks(WorkSnapshot work, long nowMicros, ClockState clock, boolean zeroMoved) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    mark(marks, Mark.ZERO_MISSING, work.zero() == null);
    mark(marks, Mark.ZERO_STALE, work.zeroTooOld(zeroRule, nowMicros));
    mark(marks, Mark.ZERO_OF_OTHER_BRIDGE, work.zeroOfOtherBridge());
    mark(marks, Mark.ZERO_MOVED, zeroMoved);
    mark(marks, Mark.ZERO_DOUBTFUL, work.doubts().zeroDoubtful());
    mark(marks, Mark.CALIBRATION_MISSING, work.calibration() == null);
    mark(
        marks,
        Mark.CALIBRATION_OVERDUE,
        work.calibration() != null && work.calibration().dueAtMicros() < nowMicros);
    mark(marks, Mark.CHECK_FAILED, work.checkFailed());
    mark(marks, Mark.CLOCK_DOUBTFUL, clock != ClockState.STEADY);
    return marks;
  }

  private static void mark(Set<Mark> marks, Mark mark, boolean applies) {
    if (applies) {
      marks.add(mark);
    }
  }
}
