package org.chordlog.correction;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.chordlog.correction.Advice.Since;
import org.chordlog.correction.LevelFilter.Newest;
import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.Positions.PieceValue;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** The whole state of a machine's filter, and what each event does to it. */
final class MachineState implements Told.Hearer {
  /** Settings closer than that are the same, where the scale's step is not known. */
  private static final double SAME_SETTING = 1e-9;

  private final Tuning tuning;
  final MachineMemory memory = new MachineMemory();
  final Positions positions = new Positions();
  final Trail trail = new Trail();
  MachineScale scale;
  @Nullable JobState job;
  @Nullable LevelFilter filter;
  RollerSetting setting = RollerSetting.unknown();
  LostMotion lostMotion = LostMotion.none();
  Promises promises = Promises.none();

  /** What nothing was measured after. */
  Since since = Since.SET_UP;

  /** The level is known although nothing was measured since: a known lot. */
  boolean foreseen;

  boolean flat;

  /** Variance of the newest piece's reading, permil squared. */
  double readingVariance;

  /** The newest advised amount that was neither recorded nor followed by a piece; 0: none. */
  double advised;

  double advisedChance;

  /** What was advised before the newest piece and not recorded, 0: nothing. */
  double silentlyAdvised;

  /** The newest recorded move, until a piece has shown its effect; 0: none. */
  double lastMove;

  boolean lastMoveReversed;

  /** What the number on the scale should have been before the newest correction, else NaN. */
  double expectedSetting = Double.NaN;

  double foundSetting = Double.NaN;

  MachineState(MachineScale scale, Tuning tuning) {
    this.scale = scale;
    this.tuning = tuning;
  }

  Tuning tuning() {
    return tuning;
  }

  private JobState job(String field, Object value) {
    JobState current = job;
    if (current == null) {
      throw new BadInput(field, value, "comes before any job or set-up", "a job first");
    }
    return current;
  }

  /** Not null once there is a job. */
  LevelFilter filter() {
    return Objects.requireNonNull(filter);
  }

  private Belief belief() {
    return filter().belief();
  }

  @Override
  public void jobStarted(Told.JobStart event) {
    JobState before = job;
    if (before == null) {
      filter = new LevelFilter(tuning, event.aim(), scale.gain());
    } else {
      memory.finish(before.place(belief()), setting.number());
      filter().newJob(before.aim(), event.aim());
    }
    job = JobState.of(event);
    positions.clear();
    begin(RollerSetting.unknown());
  }

  private void begin(RollerSetting now) {
    JobState current = Objects.requireNonNull(job);
    setting = now;
    memory.setUp(current.place(belief()));
    promises = promises.close();
    lastMove = 0;
    expectedSetting = Double.NaN;
    awaited(Since.SET_UP);
    mark(TrailPoint.Kind.SET_UP);
  }

  private void awaited(Since event) {
    since = event;
    foreseen = false;
    flat = false;
    advised = 0;
  }

  @Override
  public void setUp(Told.SetUp event) {
    JobState before = job("setUp", "it");
    if (before.sinceSetUp() > 0) {
      memory.finish(before.place(belief()), setting.number());
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
    boolean measured = !filter().fresh();
    if (!measured && before.lot().isEmpty()) {
      named(before.with(event.name()));
      return;
    }
    Shift known = memory.lotChanged(before.place(belief()), event.name(), measured);
    promises = promises.close();
    job = before.with(event.name());
    boolean foretold = step(known, event.offset(), before.aim());
    awaited(Since.NEW_LOT);
    foreseen = measured && foretold;
    lastMove = 0;
    advise();
    mark(TrailPoint.Kind.LOT);
  }

  /** The lot of a job that begins was not known until now. */
  private void named(JobState now) {
    job = now;
    memory.setUp(now.place(belief()));
  }

  /** False if nothing is known of the step. */
  private boolean step(@Nullable Shift known, Told.Lot.@Nullable Offset offset, Aim aim) {
    double unit = aim.permilOfDifference(1);
    if (known != null) {
      filter().lotStep(known.perMm() * unit, known.variance() * unit * unit);
    } else if (offset != null) {
      double u = offset.standardUncertaintyPerMm() * unit;
      filter().lotStep(offset.perMm() * unit, u * u);
    } else {
      filter().unknownLot();
    }
    return known != null || offset != null;
  }

  @Override
  public void corrected(Told.Correction event) {
    job("correction", event);
    expectedSetting = Double.NaN;
    double advice = advised;
    Double amount = event.amount();
    if (amount == null) {
      filter().movedSomehow();
      setting = RollerSetting.unknown();
      memory.interrupted();
      promises = promises.close();
      lastMove = 0;
    } else {
      double before = event.before() == null ? Double.NaN : event.before();
      unrecorded(before);
      promise(amount);
      move(before, amount);
    }
    awaited(Since.CORRECTION);
    double done = amount == null ? Double.NaN : amount;
    mark(TrailPoint.Kind.CORRECTION, Double.NaN, advice, done);
  }

  /** The number on the scale was not what it was after the last move. */
  private void unrecorded(double before) {
    double gap = before - setting.number();
    if (Double.isNaN(gap) || Math.abs(gap) <= Math.max(scale.step(), SAME_SETTING)) {
      return;
    }
    expectedSetting = setting.number();
    foundSetting = before;
    if (since == Since.PIECE) {
      filter().movedBefore(gap);
      memory.movedUnseen();
    } else {
      move(Double.NaN, gap);
    }
  }

  private void promise(double amount) {
    boolean followed = advised * amount > 0;
    double off = belief().level() - aimedAt();
    promises = followed ? promises.open(off, advisedChance) : promises.close();
  }

  private void move(double before, double amount) {
    double effective = setting.effective(amount, scale.lostMotion());
    lastMoveReversed = setting.reverses(amount);
    setting = setting.moved(before, amount);
    if (flat) {
      filter().setUp();
      memory.movedUnseen();
      lastMove = 0;
    } else {
      filter().moved(effective, moveError().variance(belief()));
      memory.moved(effective);
      lastMove = effective;
    }
  }

  MoveError moveError() {
    return new MoveError(scale, Objects.requireNonNull(job).aim().halfTolerance());
  }

  @Override
  public void targetChanged(Told.TargetChange event) {
    JobState before = job("target", event.aim().targetMm());
    filter().newTarget(before.aim(), event.aim());
    positions.rescale(event.aim().targetMm() / before.aim().targetMm());
    job = before.with(event.aim());
    memory.interrupted();
    promises = promises.close();
    advise();
    mark(TrailPoint.Kind.TARGET);
  }

  @Override
  public void scaleChanged(Told.ScaleChange event) {
    scale = event.scale();
    memory.scaleChanged();
    setting = RollerSetting.unknown();
    lostMotion = LostMotion.none();
    lastMove = 0;
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
    Positions.Values values = values(event.readings(), before.aim());
    PieceValue value = positions.value(values, before.aim().halfTolerance());
    silentlyAdvised = since == Since.PIECE ? setting.effective(advised, scale.lostMotion()) : 0;
    hear(value);
    positions.learn(values);
    job = before.piece(event.number());
    readingVariance = value.readingVariance();
    flat = !filter().outlying() && event.readings().stream().allMatch(PieceReading::flat);
    learn(value.permil());
    since = Since.PIECE;
    foreseen = false;
    advise();
    mark(TrailPoint.Kind.PIECE, value.permil(), advised, Double.NaN);
  }

  private void hear(PieceValue value) {
    double error = moveError().variance(belief());
    filter()
        .hear(
            new LevelFilter.Input(
                value.permil(),
                value.readingVariance(),
                value.extraVariance(),
                silentlyAdvised,
                error));
  }

  private void learn(double permil) {
    JobState current = Objects.requireNonNull(job);
    Newest newest = filter().newest();
    if (lastMove != 0 && newest.stray() < 0.5 && !belief().blind()) {
      lostMotion =
          lostMotion.with(
              lastMove,
              lastMoveReversed,
              newest.innovation(),
              newest.forecastVariance(),
              belief().gain());
    }
    lastMove = 0;
    promises = promises.piece(permil - aimedAt());
    memory.piece(current.place(belief()), setting.number());
  }

  /** Readings of the last pass, the mean at each position. */
  private Positions.Values values(List<PieceReading> readings, Aim aim) {
    int pass = readings.stream().mapToInt(PieceReading::pass).max().orElse(1);
    List<PieceReading> counted = readings.stream().filter(r -> r.pass() == pass).toList();
    Map<String, Spread> means = new LinkedHashMap<>();
    double variance = 0;
    for (PieceReading each : counted) {
      Spread before = means.getOrDefault(each.position(), Spread.none());
      means.put(each.position(), before.with(aim.permil(each.perMm())));
      double u = aim.permilOfDifference(each.standardUncertaintyPerMm());
      variance += u * u;
    }
    positions.check(means.keySet());
    Map<String, Double> byPosition = new LinkedHashMap<>();
    means.forEach((position, mean) -> byPosition.put(position, mean.mean()));
    double count = counted.size();
    return new Positions.Values(byPosition, variance / (count * count));
  }

  /** Level aimed at, permil: not 0 where positions differ so much that their middle counts. */
  double aimedAt() {
    Positions.Apart apart = positions.apart(Objects.requireNonNull(job).aim().halfTolerance());
    return apart == null ? 0 : apart.aim();
  }

  /** Variance of the pieces themselves about their level, permil squared. */
  double pieceVariance() {
    double newest = filter().newest().variance();
    double all = Double.isNaN(newest) ? filter().scatterVariance() : newest;
    return Math.max(0, all - readingVariance);
  }

  Adviser adviser() {
    JobState current = Objects.requireNonNull(job);
    return new Adviser(
        new Adviser.Situation(
            current.aim(),
            scale,
            setting,
            belief(),
            aimedAt(),
            pieceVariance(),
            pieceVariance() + readingVariance,
            current.toCome(tuning.stakes().pieces())),
        tuning.stakes());
  }

  /** Whether the newest reading is no surprise. */
  boolean usual() {
    Newest newest = filter().newest();
    return newest.steady() + newest.silent() >= tuning.stakes().leastSteady();
  }

  private void advise() {
    advised = 0;
    if (mayAdvise() && adviser().advise() instanceof Advice.Correct correct) {
      advised = correct.move().amount();
      advisedChance = correct.prospect().chance();
    }
  }

  /** Advice never comes from a gap: something is known of the level since the last event. */
  boolean mayAdvise() {
    return foreseen || since == Since.PIECE && usual() && !flat;
  }

  private void mark(TrailPoint.Kind kind) {
    mark(kind, Double.NaN, advised, Double.NaN);
  }

  private void mark(TrailPoint.Kind kind, double reading, double advice, double done) {
    JobState current = Objects.requireNonNull(job);
    Aim aim = current.aim();
    Belief now = belief();
    double deadband =
        aim.halfTolerance() * Math.sqrt(tuning.stakes().correction() / tuning.stakes().pieces());
    trail.add(
        new TrailPoint(
            kind,
            new TrailPoint.Where(current.job(), current.newest(), aim.targetMm(), current.lot()),
            new TrailPoint.Level(reading, now.level(), now.levelUncertainty(), deadband),
            new TrailPoint.Gain(aim.perMm(now.gain()), aim.perMm(now.gainUncertainty())),
            new TrailPoint.Move(advice, done)));
  }

  void write(Packer to) {
    scale.write(to);
    JobState current = job;
    to.put(current != null);
    if (current != null) {
      current.write(to);
      filter().write(to);
    }
    memory.write(to);
    positions.write(to);
    trail.write(to);
    setting.write(to);
    lostMotion.write(to);
    promises.write(to);
    to.put(since.ordinal()).put(foreseen).put(flat).put(readingVariance);
    to.put(advised).put(advisedChance).put(silentlyAdvised).put(lastMove).put(lastMoveReversed);
    to.put(expectedSetting).put(foundSetting);
  }

  static MachineState read(Unpacker from, Tuning tuning) {
    MachineState state = new MachineState(MachineScale.read(from), tuning);
    if (from.aBoolean()) {
      state.job = JobState.read(from);
      state.filter = LevelFilter.read(from, tuning);
    }
    state.memory.read(from);
    state.positions.read(from);
    state.trail.read(from);
    state.setting = RollerSetting.read(from);
    state.lostMotion = LostMotion.read(from);
    state.promises = Promises.read(from);
    state.readRest(from);
    return state;
  }

  private void readRest(Unpacker from) {
    since = Since.values()[from.anInt()];
    foreseen = from.aBoolean();
    flat = from.aBoolean();
    readingVariance = from.aDouble();
    advised = from.aDouble();
    advisedChance = from.aDouble();
    silentlyAdvised = from.aDouble();
    lastMove = from.aDouble();
    lastMoveReversed = from.aBoolean();
    expectedSetting = from.aDouble();
    foundSetting = from.aDouble();
  }
}
