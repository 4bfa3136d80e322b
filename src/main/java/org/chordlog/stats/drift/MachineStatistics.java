package org.chordlog.stats.drift;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.math.Blocks;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * One machine over its jobs: the deviation of every reading from its job's target, relative and in
 * curvature, (κ − κ_target)/κ_target, in time order. The readings of a piece count as one. A
 * correction or a set-up moves the level on purpose: levels are compared since then only, the trend
 * also within earlier settings. A new material lot is no such event, so that its jump is found.
 * Jobs set up differently without an event look like jumps.
 */
public final class MachineStatistics implements Checkpointed {
  private static final double LAMBDA = 0.1;
  private static final int CHECKPOINT_VERSION = 2;
  private final Blocks blocks = new Blocks();
  private final EarlierSettings earlier = new EarlierSettings();
  private Moments piece = new Moments();
  private long jobId;
  private int pieceNumber;
  private long pieceMicros;
  private long pieces;
  private double ewma = Double.NaN;

  /** Both curvatures as 1/mm on the same face; order of time. */
  public void add(long jobId, int piece, long atMicros, double curvature, double target) {
    if (!(Math.abs(Check.finite("target", target)) > 0)) {
      throw new BadInput("target", target, "is flat", "a curvature other than 0");
    }
    add(jobId, piece, atMicros, Check.finite("curvature", curvature) / target - 1);
  }

  /** A relative deviation that is known already. */
  public void add(long job, int number, long atMicros, double deviation) {
    if (pieces > 0 && (job != jobId || number != pieceNumber)) {
      closePiece();
    }
    if (piece.n() == 0) {
      pieces++;
      jobId = job;
      pieceNumber = number;
      pieceMicros = atMicros;
    }
    piece.add(deviation);
  }

  /** No more readings of the newest piece follow; else the next piece tells. */
  public void endPiece() {
    closePiece();
  }

  private void closePiece() {
    if (piece.n() > 0) {
      double mean = piece.mean();
      ewma = Double.isNaN(ewma) ? mean : LAMBDA * mean + (1 - LAMBDA) * ewma;
      blocks.add((double) pieces, pieceMicros, mean);
      piece = new Moments();
    }
  }

  @Override
  public void happened(JobEvent event) {
    closePiece();
    if (event.kind() == JobEvent.Kind.CORRECTION || event.kind() == JobEvent.Kind.SET_UP) {
      earlier.close(new Stretch(blocks.all()));
      blocks.clear();
      ewma = Double.NaN;
    }
  }

  public long pieces() {
    return pieces;
  }

  /**
   * The verdict on all pieces that are complete; {@code tolerance} is the relative deviation to
   * forecast, for example 0.01.
   */
  public MachineVerdict verdict(@Nullable Double tolerance) {
    Stretch present = new Stretch(blocks.complete());
    return new DriftJudge(present, earlier, pieces, ewma, tolerance).verdict();
  }

  /** The blocks the verdict rests on, the newest setting's single pieces up to 300, with trend. */
  public DriftSnapshot drift(String machine, @Nullable Double tolerance) {
    return new DriftSnapshots(earlier.stretches(), blocks.complete(), verdict(tolerance))
        .snapshot(machine, tolerance);
  }

  @Override
  public byte[] checkpoint() {
    Packer packer = new Packer().put(CHECKPOINT_VERSION);
    packer.put(jobId).put(pieceNumber).put(pieceMicros).put(pieces).put(ewma);
    piece.pack(packer);
    blocks.pack(packer);
    earlier.pack(packer);
    return packer.bytes();
  }

  public static MachineStatistics restore(byte[] checkpoint) {
    Unpacker from = new Unpacker(checkpoint);
    if (from.anInt() != CHECKPOINT_VERSION) {
      throw new BadInput("checkpoint", "it", "is of another version", "" + CHECKPOINT_VERSION);
    }
    MachineStatistics machine = new MachineStatistics();
    machine.jobId = from.aLong();
    machine.pieceNumber = from.anInt();
    machine.pieceMicros = from.aLong();
    machine.pieces = from.aLong();
    machine.ewma = from.aDouble();
    machine.piece = Moments.unpack(from);
    machine.blocks.unpack(from);
    machine.earlier.unpack(from);
    return machine;
  }
}
