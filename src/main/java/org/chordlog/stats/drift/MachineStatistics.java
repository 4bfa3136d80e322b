package org.chordlog.stats.drift;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
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
  private static final int CHECKPOINT_VERSION = 4;

  /** Most corrections and set-ups that are remembered. */
  private static final int SETTINGS = 100;

  private final Blocks blocks = new Blocks();
  private final EarlierStretches earlier = new EarlierStretches();
  private final Deque<Start> settings = new ArrayDeque<>();
  private final Deque<DriftFinding> history = new ArrayDeque<>();
  private Start start = Start.FIRST;
  private @Nullable DriftFinding creep;
  private Moments piece = new Moments();
  private long jobId;
  private int pieceNumber;
  private long pieceMicros;
  private long pieces;
  private double ewma = Double.NaN;
  private @Nullable Judged judged;

  /** The verdict for a tolerance, until the next piece or event. */
  private record Judged(@Nullable Double tolerance, MachineVerdict verdict) {}

  /** Both curvatures as 1/mm on the same face; order of time. */
  public void add(long jobId, int piece, long atMicros, double curvature, double target) {
    if (!(Math.abs(Check.finite("target", target)) > 0)) {
      throw new BadInput("target", target, "is flat", "a curvature other than 0");
    }
    add(jobId, piece, atMicros, Check.finite("curvature", curvature) / target - 1);
  }

  /** A relative deviation that is known already. */
  public void add(long job, int number, long atMicros, double deviation) {
    judged = null;
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
    judged = null;
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
    judged = null;
    closePiece();
    Start next = Start.of(event, pieces + 1);
    if (next != null) {
      endStretch(next.place());
      start = next;
      if (next.cause().set()) {
        settings.addLast(next);
        shorten(settings, SETTINGS);
        ewma = Double.NaN;
      }
    }
  }

  private void endStretch(MachinePlace at) {
    Stretch ended = new Stretch(start, blocks.all());
    DriftJudge judge = judge(ended);
    DriftFinding move = judge.move();
    DriftFinding lot = judge.lot();
    boolean creeps = move != null && move.kind() == DriftFinding.Kind.CREEP;
    if (!creeps) {
      record(creep, start.place());
      record(move, at);
    }
    creep = creeps ? move : null;
    record(lot, at);
    boolean jumped = move != null && move.kind() == DriftFinding.Kind.JUMP;
    (jumped && move != null ? ended.split(move.since()) : List.of(ended)).forEach(earlier::add);
    blocks.clear();
  }

  private void record(@Nullable DriftFinding found, MachinePlace until) {
    if (found != null) {
      history.addLast(found.ended(until));
      shorten(history, MachineVerdict.KEPT);
    }
  }

  private static void shorten(Deque<?> kept, int most) {
    if (kept.size() > most) {
      kept.removeFirst();
    }
  }

  private DriftJudge judge(Stretch present) {
    return new DriftJudge(present, earlier, List.copyOf(settings), creep);
  }

  /** Pieces taken in. */
  public long pieces() {
    return pieces;
  }

  /**
   * The verdict on all pieces that are complete; {@code tolerance} is the relative deviation to
   * forecast, for example 0.01.
   */
  public MachineVerdict verdict(@Nullable Double tolerance) {
    if (judged == null || !Objects.equals(judged.tolerance(), tolerance)) {
      judged = new Judged(tolerance, judge(tolerance));
    }
    return judged.verdict();
  }

  private MachineVerdict judge(@Nullable Double tolerance) {
    Stretch present = new Stretch(start, blocks.complete());
    DriftJudge judge = judge(present);
    DriftFinding move = judge.move();
    List<Stretch> all = Stream.concat(earlier.stretches().stream(), Stream.of(present)).toList();
    return new VerdictMaker(all, present, move, judge.lot(), ewma)
        .verdict(pieces, history(move), tolerance);
  }

  /** With the creep found before, where it no longer goes on. */
  private List<DriftFinding> history(@Nullable DriftFinding move) {
    List<DriftFinding> all = new ArrayList<>(history);
    if (creep != null && (move == null || move.kind() != DriftFinding.Kind.CREEP)) {
      all.add(creep.ended(start.place()));
    }
    return all;
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
    start.pack(packer);
    packer.put(settings.size());
    settings.forEach(each -> each.pack(packer));
    packer.put(history.size());
    history.forEach(each -> each.pack(packer));
    packer.put(creep != null);
    if (creep != null) {
      creep.pack(packer);
    }
    return packer.bytes();
  }

  /** The state that was written. */
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
    machine.unpackEvents(from);
    return machine;
  }

  private void unpackEvents(Unpacker from) {
    start = Start.unpack(from);
    int set = from.anInt();
    for (int i = 0; i < set; i++) {
      settings.addLast(Start.unpack(from));
    }
    int found = from.anInt();
    for (int i = 0; i < found; i++) {
      history.addLast(DriftFinding.unpack(from));
    }
    creep = from.aBoolean() ? DriftFinding.unpack(from) : null;
  }
}
