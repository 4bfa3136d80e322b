package org.chordlog.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Job;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.MeanBend;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.StoredPiece;
import org.chordlog.profile.TrackSettings;
import org.chordlog.radius.RadiusModel;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.store.Store;

/** Pieces of the invented line, with its eccentric entry roller, as readings of a job. */
final class LinePieces {
  private static final String STATION = "outfeed";

  private LinePieces() {}

  /** That job with one position, so that each piece is a reading of it. */
  static Job job(Job usual) {
    Plan whole = new Plan(List.of("whole"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1));
    return Job.opened(
        usual.order(),
        usual.workplace(),
        new Job.Inspection(usual.section(), usual.measuredFace(), usual.specification(), whole),
        usual.openedAtMicros());
  }

  /** Also records the rollers of the job's machine. */
  static List<Reading> keep(Store store, Job job, int pieces) throws IOException {
    return keep(store, job, pieces, 0);
  }

  /** And behind them so many whose curvature wanders by 1 %. */
  static List<Reading> keep(Store store, Job job, int pieces, int rough) throws IOException {
    LineScenario scenario = ScenarioFile.readLine(ScenarioFile.LINE);
    for (LineScenario.RunOut each : scenario.line().rollers()) {
      Roller roller = new Roller(each.name(), each.diameterMm(), 0, each.side(), true);
      store.machines().add(job.machine(), roller, new Recorded(1, "test"));
    }
    Bridge bridge =
        store
            .gauges()
            .add(
                new Bridge(
                    0, "bridge 200", new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0, null), 0),
                "test");
    SetUp setUp =
        new SetUp(
            bridge,
            new Indicator(0.001, 0.003, 12.5),
            null,
            null,
            job.section(),
            Face.OUTER,
            job.specification().face());
    long setUpId = store.readings().keep(setUp);
    EvaluationSettings settings =
        new EvaluationSettings(
            RadiusModel.of(setUp),
            LengthSource.CHANNEL,
            Face.OUTER,
            KnownLengths.NONE,
            job.specification(),
            DecideBy.MEAN);
    List<Reading> kept = new ArrayList<>();
    List<PieceRun> all = new ArrayList<>(runs(scenario, pieces));
    all.addAll(runs(wandering(scenario), rough));
    for (PieceRun run : all) {
      kept.add(keep(store, job, run, settings, setUpId, kept.size() + 1));
    }
    return kept;
  }

  private static LineScenario wandering(LineScenario of) {
    LineScenario.Line line = of.line();
    LineScenario.Texture texture = line.texture();
    return new LineScenario(
        of.name(),
        of.seed(),
        of.job(),
        of.bridge(),
        of.indicator(),
        new LineScenario.Line(
            line.feed(),
            line.piece(),
            new LineScenario.Texture(
                1, texture.wanderMm(), texture.roughnessUm(), texture.roughnessMm(), List.of()),
            line.vibration(),
            line.rollers(),
            line.encoder()),
        of.faults());
  }

  private static List<PieceRun> runs(LineScenario scenario, int pieces) {
    LineStream stream = new LineStream(scenario, LineErrors.NONE, 3);
    PieceTracker tracker =
        new PieceTracker(
            new TrackSettings(
                new TrackSettings.Feed(LengthSource.CHANNEL, false, 400),
                new TrackSettings.Gauge(false, null, 1000, 12_500_000, 200),
                KnownLengths.NONE));
    List<PieceRun> runs = new ArrayList<>();
    for (int i = 0; runs.size() < pieces; i++) {
      stream.next();
      long nanos = Math.round(stream.seconds() * 1e9);
      tracker.offer(i, nanos, stream.lengthNm(), stream.depthNm(), runs::add);
    }
    return runs;
  }

  private static Reading keep(
      Store store, Job job, PieceRun run, EvaluationSettings settings, long setUpId, int number) {
    PieceOutcome outcome = new PieceEvaluation(settings).of(run);
    var result = ((PieceOutcome.Measured) outcome).result();
    MeanBend mean = result.mean();
    CapturedDepth captured =
        new CapturedDepth(
            CaptureMode.PASSING,
            mean.depthNm(),
            mean.scatterNm(),
            mean.windows(),
            new CapturedDepth.SampleRange(run.firstSequence(), run.lastSequence()),
            new CapturedDepth.Moment(run.endedNanos(), 1_700_000_000_000_000L + number));
    Reading reading =
        new Reading(
            0,
            new Reading.Source(STATION, number, ClockState.STEADY, ""),
            new Reading.Place(job.id(), number, job.plan().positions().get(0)),
            new Reading.Measured(captured, mean.depthNm(), setUpId),
            new Reading.Result(mean.radius(), result.inside().decision(), Set.of()),
            Circumstances.UNRECORDED);
    return store.readings().append(reading, StoredPiece.of(run, settings)).join();
  }
}
