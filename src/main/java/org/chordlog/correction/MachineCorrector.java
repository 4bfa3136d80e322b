package org.chordlog.correction;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.JobEvent.Kind;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * A {@link Corrector} fed reading by reading, as stations announce them: gathers the readings of a
 * piece, which is complete with the next piece, event or job. A snapshot counts the piece as it is.
 * Readings of a piece that come after an event belong to what was before it and are left out,
 * unless the piece was rolled once more, or the event is another lot: they are of that one. Scales
 * that people describe come into force in the order of time. Not safe for use by several threads.
 */
public final class MachineCorrector implements Checkpointed {
  private static final int VERSION = 9;

  /** More readings of one piece than that are left out: in the line, tell their mean instead. */
  private static final int MOST_READINGS = 500;

  private static final int MOST_WAITING = 64;

  /** A scale and from when it is in force, microseconds UTC. */
  public record Described(MachineScale scale, long fromMicros) {}

  private final Corrector corrector;
  private final Tuning tuning;
  private final Supplier<List<Described>> scales;
  private final List<PieceReading> readings = new ArrayList<>();
  private final List<WaitingEvent> waiting = new ArrayList<>();
  private int piece;

  /** How many of the scales have come into force. */
  private int described;

  /** One scale for all times. */
  public MachineCorrector(MachineScale scale, Tuning tuning) {
    this(new Corrector(scale, tuning), tuning, List::of);
  }

  /**
   * {@code scales}: all that were described, in the order of time; more may be added at the end.
   */
  public MachineCorrector(Tuning tuning, Supplier<List<Described>> scales) {
    this(new Corrector(MachineScale.unknown(), tuning), tuning, scales);
  }

  private MachineCorrector(Corrector corrector, Tuning tuning, Supplier<List<Described>> scales) {
    this.corrector = corrector;
    this.tuning = tuning;
    this.scales = scales;
  }

  /** Time comes to that moment, microseconds UTC: call it before each reading. */
  public void at(long micros) {
    List<Described> all = scales.get();
    while (described < all.size() && all.get(described).fromMicros() <= micros) {
      scale(all.get(described).scale());
      described++;
    }
  }

  /** A job begins; nothing happens if it is the present one with the same limits. */
  public void start(JobStart job) {
    if (job.job() != corrector.job()) {
      closePiece();
      corrector.tell(job);
      waiting.stream().filter(each -> each.job() == job.job()).forEach(this::tell);
      waiting.removeIf(each -> each.job() == job.job() || each.movesRollers());
      return;
    }
    JobState now = corrector.state().job();
    if (now != null && !now.aim().equals(job.aim())) {
      closePiece();
      corrector.tell(new Told.TargetChange(job.aim()));
    }
  }

  /** A reading, with the job as it was when it was taken. */
  public void reading(JobStart job, int number, PieceReading reading) {
    start(job);
    waiting.replaceAll(WaitingEvent::passedBy);
    if (number != piece) {
      closePiece();
      piece = number;
    }
    JobState now = corrector.state().job();
    boolean counts = now == null || now.takes(number, reading.pass());
    if (counts && readings.size() < MOST_READINGS) {
      readings.add(reading);
    }
  }

  private void closePiece() {
    if (!readings.isEmpty()) {
      corrector.tell(new Told.Piece(piece, readings));
      readings.clear();
    }
  }

  @Override
  public void happened(JobEvent event) {
    at(event.atMicros());
    WaitingEvent told = WaitingEvent.of(event);
    if (told.job() == corrector.job()) {
      closePiece();
      tell(told);
    } else if (told.movesRollers() || told.kind() == Kind.MATERIAL_LOT) {
      await(told);
    }
  }

  private void await(WaitingEvent told) {
    waiting.add(told);
    if (waiting.size() > MOST_WAITING) {
      waiting.remove(0);
    }
  }

  private void tell(WaitingEvent event) {
    switch (event.kind()) {
      case SET_UP -> corrector.tell(new Told.SetUp(event.after()));
      case MATERIAL_LOT -> lot(event.lot());
      case CORRECTION -> corrector.tell(correction(event));
      case ZERO, LIMITS_FROZEN, LIMITS_RELEASED, NOTE, BRIDGE -> {}
    }
  }

  /** The same lot told again is no change. */
  private void lot(String name) {
    JobState now = corrector.state().job();
    if (name.isEmpty() || now == null || !now.lot().equals(name)) {
      corrector.tell(new Told.Lot(name));
    }
  }

  private static Told correction(WaitingEvent event) {
    Double before = event.before();
    Double after = event.after();
    return before == null || after == null
        ? Told.Correction.withoutAmount()
        : Told.Correction.between(before, after);
  }

  /** The scale was described anew; nothing happens if it is the same. */
  void scale(MachineScale scale) {
    if (!scale.equals(corrector.state().scale())) {
      corrector.tell(new Told.ScaleChange(scale));
    }
  }

  /**
   * What there is to say now, the present piece counted as it is; {@code gaugeDoubt}: why the gauge
   * can't be relied on, empty if it can.
   */
  public CorrectionSnapshot snapshot(String gaugeDoubt) {
    MachineCorrector copy = copy();
    copy.at(Long.MAX_VALUE);
    copy.closePiece();
    CorrectionSnapshot now = copy.corrector.snapshot(gaugeDoubt);
    if (waiting.stream().anyMatch(WaitingEvent::setsUp) && gaugeDoubt.isBlank()) {
      return now.with(new Advice.TooEarly(null, 1, Advice.Since.SET_UP));
    }
    boolean begun = readings.size() == 1 && gaugeDoubt.isBlank();
    return begun ? now.with(corrector.restOfPiece(readings.get(0))) : now;
  }

  /** The same while that job is on the machine, also before its first reading. */
  public CorrectionSnapshot snapshot(String gaugeDoubt, JobStart present) {
    MachineCorrector copy = copy();
    copy.start(present);
    return copy.snapshot(gaugeDoubt);
  }

  private MachineCorrector copy() {
    return restore(checkpoint(), tuning, scales);
  }

  /** {@link Corrector#startSetting}. */
  public @Nullable StartSetting startSetting(JobStart planned) {
    return corrector.startSetting(planned);
  }

  @Override
  public byte[] checkpoint() {
    Packer to = new Packer().put(VERSION);
    corrector.state().write(to);
    to.put(piece).put(described);
    Packing.putAll(to, readings, PieceReading::write);
    Packing.putAll(to, waiting, WaitingEvent::write);
    return to.bytes();
  }

  /** {@link BadInput} for what is not a checkpoint of this version. */
  public static MachineCorrector restore(byte[] checkpoint, Tuning tuning) {
    return restore(checkpoint, tuning, List::of);
  }

  /** The same with the scales that were described. */
  public static MachineCorrector restore(
      byte[] checkpoint, Tuning tuning, Supplier<List<Described>> scales) {
    return Packing.restore(checkpoint, VERSION, from -> read(from, tuning, scales));
  }

  private static MachineCorrector read(
      Unpacker from, Tuning tuning, Supplier<List<Described>> scales) {
    Corrector corrector = Corrector.of(MachineState.read(from, tuning));
    MachineCorrector restored = new MachineCorrector(corrector, tuning, scales);
    restored.piece = from.anInt();
    restored.described = from.anInt();
    restored.readings.addAll(Packing.all(from, PieceReading::read));
    restored.waiting.addAll(Packing.all(from, WaitingEvent::read));
    return restored;
  }
}
