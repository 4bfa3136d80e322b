package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.chordlog.stats.drift.MachineStatistics;

/** A scenario in invented time, through capture and radius into the view of its machine. */
final class SimulatedMachine {
  private final Scenario scenario;
  private final MachineStatistics statistics = new MachineStatistics();
  private final RadiusModel model;
  private long events;

  SimulatedMachine(Scenario scenario) {
    this.scenario = scenario;
    var job = scenario.job();
    model =
        RadiusModel.of(
            new SetUp(
                scenario.bridge().bridge(),
                scenario.indicator().indicator(),
                null,
                null,
                job.tube(),
                job.measuredFace(),
                job.specifiedFace()));
  }

  /** The readings are told piece by piece with the statistics that hold it. */
  void play(int pieces, long seed, BiConsumer<Integer, MachineStatistics> look) {
    List<Contact> truth = new ArrayList<>();
    int last = 0;
    for (CaptureOutcome outcome :
        CaptureStudy.play(CaptureMode.SETTLED, scenario, pieces, seed, truth)) {
      if (outcome instanceof Captured captured) {
        double seconds = captured.depth().monotonicNanos() / 1e9;
        int piece = truth.get(CaptureStudy.pieceAt(truth, seconds)).piece();
        happenBefore(piece, last);
        take(piece, captured.depth());
        last = piece;
        look.accept(piece, statistics);
      }
    }
  }

  private void take(int piece, CapturedDepth depth) {
    long zero = Math.round(scenario.indicator().showsOnFlatMm() * 1e6);
    RadiusEstimate radius =
        model.estimate(depth.valueNm() - zero, depth.scatterNm(), depth.sampleCount());
    double target = 1 / scenario.job().targetMm();
    statistics.add(1, piece, depth.wallMicros(), radius.curvaturePerMm(), target);
    statistics.endPiece();
  }

  /** What the operator records. */
  private void happenBefore(int piece, int last) {
    scenario.lots().stream()
        .filter(lot -> lot.fromPiece() > Math.max(1, last) && lot.fromPiece() <= piece)
        .forEach(lot -> statistics.happened(event(JobEvent.Kind.MATERIAL_LOT, lot.name())));
    scenario.corrections().stream()
        .filter(each -> each.beforePiece() > last && each.beforePiece() <= piece)
        .forEach(each -> statistics.happened(event(JobEvent.Kind.CORRECTION, "")));
  }

  private JobEvent event(JobEvent.Kind kind, String lot) {
    return new JobEvent(
        ++events,
        1,
        "roller 1",
        kind,
        0,
        new JobEvent.Content(null, null, lot, ""),
        new Recorded(0, "operator"));
  }
}
