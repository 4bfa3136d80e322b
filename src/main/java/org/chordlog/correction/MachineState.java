package org.chordlog.correction;

import java.util.Objects;
import org.chordlog.correction.Advice.Since;
import org.chordlog.correction.LevelFilter.Newest;
import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.Positions.PieceValue;
import org.chordlog.correction.RollerMoves.Gap;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** The whole state of a machine's filter, and what each event does to it. */
final class MachineState implements Told.Hearer {
  private final Tuning tuning;
  final MachineMemory memory = new MachineMemory();
  final Positions positions = new Positions();
  final RollerMoves moves = new RollerMoves();
  final Following following = new Following();
  final Trail trail = new Trail();
  private MachineScale scale;
  private @Nullable JobState job;
  private @Nullable LevelFilter filter;

  /** What nothing was measured after. */
  private Since since = Since.SET_UP;

  /** The level is known although nothing was measured since: a known lot. */
  private boolean foreseen;

  private boolean flat;

  /** Variance of the newest piece's reading, permil squared. */
  private double readingVariance;

  MachineState(MachineScale scale, Tuning tuning) {
    this.scale = scale;
    this.tuning = tuning;
  }

  Tuning tuning() {
    return tuning;
  }

  MachineScale scale() {
    return scale;
  }

  Since since() {
    return since;
  }

  double readingVariance() {
    return readingVariance;
  }

  @Nullable JobState job() {
    return job;
  }

  private JobState job(String field, Object value) {
    JobState current = job;
    if (current == null) {
      throw new BadInput(field, value, "comes before any job or set-up", "a job first");
    }
    return current;
  }

  private JobState present() {
    return Objects.requireNonNull(job);
  }

  /** Not null once there is a job. */
  LevelFilter filter() {
    return Objects.requireNonNull(filter);
  }

  Belief belief() {
    return filter().belief();
  }

  @Override
  public void jobStarted(Told.JobStart event) {
    JobState before = job;
    if (before == null) {
      filter = new LevelFilter(tuning, event.aim(), scale.gain());
    } else {
      memory.finish(before.place(belief()), moves.setting().number());
      filter().newJob(before.aim(), event.aim());
    }
    job = JobState.of(event);
    positions.clear();
    begin(RollerSetting.unknown());
  }

  private void begin(RollerSetting now) {
    moves.begin(now);
    memory.setUp(present().place(belief()));
    following.interrupted();
    awaited(Since.SET_UP);
    mark(TrailPoint.Kind.SET_UP);
  }

  private void awaited(Since event) {
    since = event;
    foreseen = false;
    flat = false;
    following.outdated();
  }

  @Override
  public void setUp(Told.SetUp event) {
    JobState before = job("setUp", "it");
    if (before.sinceSetUp() > 0) {
      memory.finish(before.place(belief()), moves.setting().number());
    }
    job = before.setUp();
    Double number = event.setting();
    filter().setUp();
    begin(number == null ? RollerSetting.unknown() : new RollerSetting(number, 0));
    StartSetting start = memory.start(before.place(belief()));
    if (number != null && start != null) {
      filter().setUpNear(start.standardUncertaintyPermil(), number - start.setting());
    }
  }

  @Override
  public void lotChanged(Told.Lot event) {
    JobState before = job("lot", event.name());
    if (!event.name().isEmpty() && event.name().equals(before.lot())) {
      throw new BadInput("lot", event.name(), "is in the machine already", "another lot");
    }
    job = before.with(event.name());
    if (filter().fresh() && before.lot().isEmpty()) {
      memory.setUp(present().place(belief()));
    } else {
      anotherLot(before, event);
    }
  }

  private void anotherLot(JobState before, Told.Lot event) {
    boolean measured = !filter().fresh();
    Shift known = memory.lotChanged(before.place(belief()), event.name(), measured);
    boolean foretold = filter().anotherLot(known, event.offset(), before.aim());
    following.interrupted();
    moves.untestable();
    awaited(Since.NEW_LOT);
    foreseen = measured && foretold;
    advise();
    mark(TrailPoint.Kind.LOT);
  }

  @Override
  public void corrected(Told.Correction event) {
    job("correction", event);
    double advice = following.advised();
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
    filter().movedSomehow();
    moves.begin(RollerSetting.unknown());
    memory.interrupted();
    following.interrupted();
  }

  private void moved(double before, double amount) {
    Gap gap = moves.compare(before, scale);
    if (gap != null && since == Since.PIECE) {
      filter().movedBefore(gap.amount());
      memory.movedUnseen();
    } else if (gap != null) {
      move(Double.NaN, gap.amount());
    }
    following.corrected(amount, belief().level() - aimedAt());
    move(before, amount);
  }

  /** From a flat nobody knows how far it is to the first bend: no gain is learned from that. */
  private void move(double before, double amount) {
    double effective = moves.moved(before, amount, scale);
    if (flat) {
      filter().setUp();
      memory.movedUnseen();
      moves.untestable();
    } else {
      filter().moved(effective, moveError().variance(belief()));
      memory.moved(effective);
    }
  }

  MoveError moveError() {
    return new MoveError(scale, present().aim().halfTolerance());
  }

  @Override
  public void targetChanged(Told.TargetChange event) {
    JobState before = job("target", event.aim().targetMm());
    filter().newTarget(before.aim(), event.aim());
    positions.rescale(event.aim().targetMm() / before.aim().targetMm());
    job = before.with(event.aim());
    memory.interrupted();
    following.interrupted();
    advise();
    mark(TrailPoint.Kind.TARGET);
  }

  @Override
  public void scaleChanged(Told.ScaleChange event) {
    scale = event.scale();
    memory.scaleChanged();
    moves.beginAnew();
    JobState current = job;
    if (current != null) {
      filter().newScale(current.aim(), scale.gain());
      advise();
      mark(TrailPoint.Kind.SCALE);
    }
  }

  @Override
  public void measured(Told.Piece event) {
    JobState before = job("piece", event.number());
    if (event.number() <= before.newest()) {
      throw new BadInput(
          "piece", event.number(), "is out of order", "above " + before.newest() + " in this job");
    }
    Positions.Values values = Positions.Values.of(event.readings(), before.aim());
    positions.check(values.byPosition().keySet());
    PieceValue value = positions.value(values, before.aim().halfTolerance());
    following.pieceComes(since == Since.PIECE);
    hear(value);
    job = before.piece(event.number());
    readingVariance = value.readingVariance();
    boolean outlying = filter().outlying();
    flat = !outlying && event.readings().stream().allMatch(PieceReading::flat);
    if (!outlying) {
      learn(values, value.permil());
    }
    since = Since.PIECE;
    foreseen = false;
    advise();
    mark(TrailPoint.Kind.PIECE, value.permil(), following.advised(), Double.NaN);
  }

  private void hear(PieceValue value) {
    double silent = moves.setting().effective(following.unrecorded(), scale.lostMotion());
    double error = moveError().variance(belief());
    filter()
        .hear(
            new LevelFilter.Input(
                value.permil(), value.readingVariance(), value.extraVariance(), silent, error));
  }

  private void learn(Positions.Values values, double permil) {
    positions.learn(values);
    moves.test(filter().newest(), belief());
    following.piece(permil - aimedAt());
    memory.piece(present().place(belief()), moves.setting().number());
  }

  /** Level aimed at, permil: not 0 where positions differ so much that their middle counts. */
  double aimedAt() {
    Positions.Apart apart = positions.apart(present().aim().halfTolerance());
    return apart == null ? 0 : apart.aim();
  }

  /** Variance of the pieces themselves about their level, permil squared. */
  double pieceVariance() {
    double newest = filter().newest().variance();
    double all = Double.isNaN(newest) ? filter().scatterVariance() : newest;
    return Math.max(0, all - readingVariance);
  }

  Adviser adviser() {
    int toCome = present().toCome(tuning.stakes().pieces());
    double pieces = pieceVariance();
    return new Adviser(
        new Adviser.Situation(
            new Adviser.Goal(present().aim(), aimedAt(), toCome),
            scale,
            moves.setting(),
            belief(),
            new Adviser.Variances(pieces, pieces + readingVariance)),
        tuning.stakes());
  }

  /** Whether the newest reading is no surprise. */
  boolean usual() {
    Newest newest = filter().newest();
    return newest.steady() + newest.silent() >= tuning.stakes().leastSteady();
  }

  private void advise() {
    following.outdated();
    if (mayAdvise()) {
      following.advise(adviser().advise());
    }
  }

  /** Advice never comes from a gap: something is known of the level since the last event. */
  boolean mayAdvise() {
    return foreseen || (since == Since.PIECE && usual() && !flat);
  }

  private void mark(TrailPoint.Kind kind) {
    mark(kind, Double.NaN, following.advised(), Double.NaN);
  }

  private void mark(TrailPoint.Kind kind, double reading, double advice, double done) {
    double deadband = tuning.stakes().deadband() * present().aim().halfTolerance();
    trail.add(
        TrailPoint.of(
            kind,
            present(),
            belief(),
            new TrailPoint.Seen(reading, deadband),
            new TrailPoint.Move(advice, done)));
  }

  void write(Packer to) {
    scale.write(to);
    to.put(job != null);
    if (job != null) {
      job.write(to);
      filter().write(to);
    }
    memory.write(to);
    positions.write(to);
    moves.write(to);
    following.write(to);
    trail.write(to);
    to.put(since.name()).put(foreseen).put(flat).put(readingVariance);
  }

  static MachineState read(Unpacker from, Tuning tuning) {
    MachineState state = new MachineState(MachineScale.read(from), tuning);
    if (from.aBoolean()) {
      state.job = JobState.read(from);
      state.filter = LevelFilter.read(from, tuning);
    }
    state.memory.read(from);
    state.positions.read(from);
    state.moves.read(from);
    state.following.read(from);
    state.trail.read(from);
    state.since = Since.valueOf(from.text());
    state.foreseen = from.aBoolean();
    state.flat = from.aBoolean();
    state.readingVariance = from.aDouble();
    return state;
  }
}
