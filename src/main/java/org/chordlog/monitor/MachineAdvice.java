package org.chordlog.monitor;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.correction.Aim;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Tuning;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The correction filter of one machine, told piece by piece from readings. The readings of the
 * newest piece are held back until the next piece or event, since a further position or pass still
 * belongs to it; what is said meanwhile includes them.
 */
final class MachineAdvice implements Checkpointed {
  private static final int CHECKPOINT_VERSION = 1;
  private static final String NO_LIMITS = "this job has no limits.";

  /** A reading as the filter needs it, and the job that it belongs to. */
  record Seen(Told.JobStart job, int piece, PieceReading reading) {}

  private final MachineScale scale;
  private Corrector corrector;
  private final List<PieceReading> pending = new ArrayList<>();
  private int pendingPiece;
  private int told;
  private Told.@Nullable JobStart job;

  MachineAdvice(MachineScale scale) {
    this.scale = scale;
    this.corrector = new Corrector(scale, Tuning.usual());
  }

  /** {@code seen} null for a reading of a job without limits, on which nothing can be said. */
  void add(@Nullable Seen seen) {
    if (seen == null) {
      tellPending();
      job = null;
      return;
    }
    begin(seen.job());
    if (seen.piece() != pendingPiece) {
      tellPending();
      pendingPiece = seen.piece();
    }
    pending.add(seen.reading());
  }

  private void begin(Told.JobStart asked) {
    Told.JobStart present = job;
    if (present != null && present.job() == asked.job()) {
      if (!present.aim().equals(asked.aim())) {
        tellPending();
        corrector.tell(new Told.TargetChange(asked.aim()));
      }
    } else {
      tellPending();
      told = 0;
      corrector.tell(asked);
    }
    job = asked;
  }

  private void tellPending() {
    if (!pending.isEmpty()) {
      corrector.tell(new Told.Piece(++told, pending));
      pending.clear();
    }
    pendingPiece = 0;
  }

  @Override
  public void happened(JobEvent event) {
    Told.JobStart present = job;
    if (present != null && present.job() == event.jobId()) {
      switch (event.kind()) {
        case CORRECTION -> tell(correction(event));
        case SET_UP -> tell(new Told.SetUp(event.settingAfter()));
        case MATERIAL_LOT -> lot(present, event.materialLot());
        case ZERO, LIMITS_FROZEN, LIMITS_RELEASED, NOTE -> {}
      }
    }
  }

  /** The lot that is in the machine already is no change. */
  private void lot(Told.JobStart present, String lot) {
    if (!lot.equals(present.lot())) {
      tell(new Told.Lot(lot));
      job =
          new Told.JobStart(
              present.job(), present.aim(), present.part(), present.section(), lot, null);
    }
  }

  private static Told correction(JobEvent event) {
    Double before = event.settingBefore();
    Double after = event.settingAfter();
    return before == null || after == null
        ? Told.Correction.withoutAmount()
        : Told.Correction.between(before, after);
  }

  private void tell(Told event) {
    tellPending();
    corrector.tell(event);
  }

  /** {@code gaugeDoubt}: why the gauge can't be relied on now, empty if it can. */
  CorrectionSnapshot snapshot(String gaugeDoubt) {
    return withPending().snapshot(job == null ? NO_LIMITS : gaugeDoubt);
  }

  private Corrector withPending() {
    if (pending.isEmpty()) {
      return corrector;
    }
    Corrector ahead = Corrector.restore(corrector.checkpoint(), Tuning.usual());
    ahead.tell(new Told.Piece(told + 1, pending));
    return ahead;
  }

  @Override
  public byte[] checkpoint() {
    byte[] state = corrector.checkpoint();
    Packer packer = new Packer().put(CHECKPOINT_VERSION).put(scale.toString());
    packer.put(told).put(pendingPiece).put(pending.size());
    pending.forEach(each -> put(packer, each));
    putJob(packer);
    byte[] head = packer.bytes();
    return ByteBuffer.allocate(Integer.BYTES + head.length + state.length)
        .putInt(head.length)
        .put(head)
        .put(state)
        .array();
  }

  private static void put(Packer packer, PieceReading reading) {
    packer.put(reading.position()).put(reading.pass()).put(reading.perMm());
    packer.put(reading.standardUncertaintyPerMm()).put(reading.flat());
  }

  private void putJob(Packer packer) {
    Told.JobStart present = job;
    packer.put(present != null);
    if (present != null) {
      Aim aim = present.aim();
      packer.put(present.job()).put(present.part()).put(present.section()).put(present.lot());
      packer.put(aim.targetMm()).put(orNaN(aim.lowerMm())).put(orNaN(aim.upperMm()));
    }
  }

  /** {@link BadInput} for a state of another version or scale: then reprocess. */
  static MachineAdvice restore(MachineScale scale, byte[] checkpoint) {
    ByteBuffer bytes = ByteBuffer.wrap(checkpoint);
    byte[] head = new byte[bytes.getInt()];
    bytes.get(head);
    byte[] state = new byte[bytes.remaining()];
    bytes.get(state);
    Unpacker from = new Unpacker(head);
    if (from.anInt() != CHECKPOINT_VERSION || !from.text().equals(scale.toString())) {
      throw new BadInput("checkpoint", "it", "is of another version or scale", "one of this scale");
    }
    MachineAdvice restored = new MachineAdvice(scale);
    restored.corrector = Corrector.restore(state, Tuning.usual());
    restored.read(from);
    return restored;
  }

  private void read(Unpacker from) {
    told = from.anInt();
    pendingPiece = from.anInt();
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      pending.add(
          new PieceReading(
              from.text(), from.anInt(), from.aDouble(), from.aDouble(), from.aBoolean()));
    }
    job = from.aBoolean() ? readJob(from) : null;
  }

  private static Told.JobStart readJob(Unpacker from) {
    long id = from.aLong();
    String part = from.text();
    String section = from.text();
    String lot = from.text();
    Aim aim = new Aim(from.aDouble(), orNull(from.aDouble()), orNull(from.aDouble()));
    return new Told.JobStart(id, aim, part, section, lot, null);
  }

  private static double orNaN(@Nullable Double value) {
    return value == null ? Double.NaN : value;
  }

  private static @Nullable Double orNull(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
