package org.chordlog.correction;

import org.chordlog.correction.Advice.Since;
import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.Positions.PieceValue;
import org.chordlog.correction.RollerMoves.Gap;
import org.chordlog.measure.BadInput;

/** What each event does to the state of a machine's filter. */
final class MachineEvents implements Told.Hearer {
  private final MachineState state;

  MachineEvents(MachineState state) {
    this.state = state;
  }

  private JobState job(String field, Object value) {
    JobState current = state.job;
    if (current == null) {
      throw new BadInput(field, value, "comes before any job or set-up", "a job first");
    }
    return current;
  }

  @Override
  public void jobStarted(Told.JobStart event) {
    JobState before = state.job;
    if (before == null) {
      state.filter = new LevelFilter(state.tuning, event.aim(), state.scale.gain());
    } else {
      state.memory.finish(before.place(state.belief()), state.moves.setting().number());
      state.filter().newJob(before.aim(), event.aim());
    }
    state.job = JobState.of(event);
    state.positions.clear();
    begin(RollerSetting.unknown());
  }

  private void begin(RollerSetting now) {
    state.moves.begin(now);
    state.memory.setUp(state.present().place(state.belief()));
    state.following.interrupted();
    awaited(Since.SET_UP);
    mark(TrailPoint.Kind.SET_UP);
  }

  private void awaited(Since event) {
    state.since = event;
    state.foreseen = false;
    state.flat = false;
    state.following.outdated();
  }

  @Override
  public void setUp(Told.SetUp event) {
    JobState before = job("setUp", "it");
    if (before.sinceSetUp() > 0) {
      state.memory.finish(before.place(state.belief()), state.moves.setting().number());
    }
    state.job = before.setUp();
    Double number = event.setting();
    state.filter().setUp();
    begin(number == null ? RollerSetting.unknown() : new RollerSetting(number, 0));
    StartSetting start = state.memory.start(before.place(state.belief()));
    if (number != null && start != null) {
      state.filter().setUpNear(start.standardUncertaintyPermil(), number - start.setting());
    }
  }

  @Override
  public void lotChanged(Told.Lot event) {
    JobState before = job("lot", event.name());
    if (!event.name().isEmpty() && event.name().equals(before.lot())) {
      throw new BadInput("lot", event.name(), "is in the machine already", "another lot");
    }
    state.job = before.with(event.name());
    if (state.filter().fresh() && before.lot().isEmpty()) {
      state.memory.setUp(state.present().place(state.belief()));
    } else {
      anotherLot(before, event);
    }
  }

  private void anotherLot(JobState before, Told.Lot event) {
    boolean measured = !state.filter().fresh();
    Shift known = state.memory.lotChanged(before.place(state.belief()), event.name(), measured);
    boolean foretold = state.filter().anotherLot(known, event.offset(), before.aim());
    state.following.interrupted();
    state.moves.untestable();
    awaited(Since.NEW_LOT);
    state.foreseen = measured && foretold;
    advise();
    mark(TrailPoint.Kind.LOT);
  }

  @Override
  public void corrected(Told.Correction event) {
    job("correction", event);
    double advice = state.following.advised();
    Double amount = event.amount();
    if (amount == null) {
      movedSomehow();
    } else {
      moved(event.before() == null ? Double.NaN : event.before(), amount);
    }
    awaited(Since.CORRECTION);
    double done = amount == null ? Double.NaN : amount;
    mark(TrailPoint.Kind.CORRECTION, Double.NaN, advice, done);
  }

  private void movedSomehow() {
    state.filter().movedSomehow();
    state.moves.begin(RollerSetting.unknown());
    state.memory.interrupted();
    state.following.interrupted();
  }

  private void moved(double before, double amount) {
    Gap gap = state.moves.compare(before, state.scale);
    if (gap != null && state.since == Since.PIECE) {
      state.filter().movedBefore(gap.amount());
      state.memory.movedUnseen();
    } else if (gap != null) {
      move(Double.NaN, gap.amount());
    }
    state.following.corrected(amount, state.belief().level() - state.aimedAt());
    move(before, amount);
  }

  /** From a flat nobody knows how far it is to the first bend: no gain is learned from that. */
  private void move(double before, double amount) {
    double effective = state.moves.moved(before, amount, state.scale);
    if (state.flat) {
      state.filter().setUp();
      state.memory.movedUnseen();
      state.moves.untestable();
    } else {
      state.filter().moved(effective, state.moveError().variance(state.belief()));
      state.memory.moved(effective);
      state.moves.learnedFrom(effective);
    }
  }

  @Override
  public void targetChanged(Told.TargetChange event) {
    JobState before = job("target", event.aim().targetMm());
    state.filter().newTarget(before.aim(), event.aim());
    state.positions.rescale(event.aim().targetMm() / before.aim().targetMm());
    state.job = before.with(event.aim());
    state.memory.interrupted();
    state.following.interrupted();
    advise();
    mark(TrailPoint.Kind.TARGET);
  }

  @Override
  public void scaleChanged(Told.ScaleChange event) {
    boolean sameNumbers = event.scale().goesOnFrom(state.scale);
    state.scale = event.scale();
    if (!sameNumbers) {
      state.memory.scaleChanged();
      state.moves.beginAnew();
    }
    JobState current = state.job;
    if (current != null) {
      if (!sameNumbers || state.belief().gainNoBetterThan(state.scale.gain())) {
        state.filter().newScale(current.aim(), state.scale.gain());
      }
      advise();
      mark(TrailPoint.Kind.SCALE);
    }
  }

  @Override
  public void measured(Told.Piece event) {
    JobState before = job("piece", event.number());
    if (!before.takes(event.number(), event.pass())) {
      throw new BadInput(
          "piece",
          event.number(),
          "is out of order",
          "above " + before.newest() + " in this job, or that one in a later pass");
    }
    Positions.Values values = Positions.Values.of(event.readings(), before.aim());
    state.positions.check(values.byPosition().keySet());
    PieceValue value = state.positions.value(values, before.aim().halfTolerance());
    state.following.pieceComes(state.since == Since.PIECE);
    hear(value);
    state.job = before.piece(event.number(), event.pass());
    state.readingVariance = value.readingVariance();
    boolean outlying = state.filter().outlying();
    state.flat = !outlying && event.readings().stream().allMatch(PieceReading::flat);
    if (!outlying) {
      learn(values, value.permil());
    }
    state.since = Since.PIECE;
    state.foreseen = false;
    advise();
    mark(TrailPoint.Kind.PIECE, value.permil(), state.following.advised(), Double.NaN);
  }

  private void hear(PieceValue value) {
    double silent =
        state.moves.setting().effective(state.following.unrecorded(), state.scale.lostMotion());
    double error = state.moveError().variance(state.belief());
    state
        .filter()
        .hear(
            new PieceInput(
                value.permil(), value.readingVariance(), value.extraVariance(), silent, error));
  }

  private void learn(Positions.Values values, double permil) {
    state.positions.learn(values);
    state.moves.test(state.filter().newest(), state.belief());
    state.following.piece(permil - state.aimedAt());
    state.memory.piece(state.present().place(state.belief()), state.moves.setting().number());
  }

  private void advise() {
    state.following.outdated();
    if (state.mayAdvise()) {
      state.following.advise(state.adviser().advise());
    }
  }

  private void mark(TrailPoint.Kind kind) {
    mark(kind, Double.NaN, state.following.advised(), Double.NaN);
  }

  private void mark(TrailPoint.Kind kind, double reading, double advice, double done) {
    double deadband = state.tuning.stakes().deadband() * state.present().aim().halfTolerance();
    state.trail.add(
        TrailPoint.of(
            kind,
            state.present(),
            state.belief(),
            new TrailPoint.Seen(reading, deadband),
            new TrailPoint.Move(advice, done)));
  }
}
