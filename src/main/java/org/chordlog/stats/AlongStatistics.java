package org.chordlog.stats;

import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.SignalKey;
import org.chordlog.stats.math.Checkpointed;

/**
 * How even the pieces of a job are along their length, piece by piece: each measure charted and
 * judged as the radius of a job is. Fed like {@link JobStatistics}. Not thread-safe.
 */
public final class AlongStatistics implements Checkpointed {
  /** Former checkpoints began with a length. */
  private static final int VERSION = -2;

  private static final String OF_ROOTS =
      " The verdict rests on the cube roots of the ranges, which are hardly skewed.";

  private final Map<AlongMeasure, JobStatistics> charted = new EnumMap<>(AlongMeasure.class);

  /**
   * Ranges are skewed and their cube roots hardly, as those of a sum of squares (Wilson, Hilferty,
   * Proceedings of the National Academy of Sciences 17, 1931, from memory): the verdict, whose
   * bounds are those of normal values, rests on them.
   */
  private JobStatistics judgedRange = new JobStatistics(AlongMeasure.RANGE.plan());

  /** Without pieces yet. */
  public AlongStatistics() {
    for (AlongMeasure measure : AlongMeasure.values()) {
      charted.put(measure, new JobStatistics(measure.plan()));
    }
  }

  /** One piece: its measures in percent of curvature, the trend with its standard uncertainty. */
  public record Piece(
      long readingId,
      int piece,
      long atMicros,
      double rangePercent,
      double trendPercent,
      double trendUncertaintyPercent) {
    private Observation of(AlongMeasure measure) {
      boolean range = measure == AlongMeasure.RANGE;
      return new Observation(
          readingId,
          piece,
          measure.title(),
          atMicros,
          range ? rangePercent : trendPercent,
          range ? 0 : trendUncertaintyPercent);
    }

    private Observation cubeRootOfRange() {
      return new Observation(
          readingId, piece, AlongMeasure.RANGE.title(), atMicros, StrictMath.cbrt(rangePercent), 0);
    }
  }

  /** As {@link JobStatistics#exclude}. */
  public boolean exclude(long readingId, String reason) {
    boolean noted = judgedRange.exclude(readingId, reason);
    for (JobStatistics each : charted.values()) {
      noted &= each.exclude(readingId, reason);
    }
    return noted;
  }

  /** Takes in the next piece; {@link BadInput} unless its reading's id rises. */
  public void add(Piece piece) {
    charted.forEach((measure, statistics) -> statistics.add(piece.of(measure)));
    judgedRange.add(piece.cubeRootOfRange());
  }

  @Override
  public void happened(JobEvent event) {
    charted.values().forEach(each -> each.happened(event));
    judgedRange.happened(event);
  }

  /** Pieces taken in, excluded ones too. */
  public long count() {
    return of(AlongMeasure.RANGE).count();
  }

  /** As {@link JobStatistics#answer}, of one measure. */
  public void answer(AlongMeasure measure, Set<SignalKey> signals) {
    judged(measure).answer(signals);
  }

  /** The charts of a measure. */
  public Set<ChartKind> kinds(AlongMeasure measure) {
    return of(measure).kinds(measure.title());
  }

  /** Whether the pieces are as even now as they were after the last change. */
  public ControlVerdict control(AlongMeasure measure) {
    return judged(measure).control(measure.title());
  }

  /** Of individuals, moving range, EWMA or CUSUM; a limit that can't be reached is left out. */
  public ChartSnapshot chart(AlongMeasure measure, ChartKind kind) {
    ChartSnapshot chart = of(measure).chart(measure.title(), kind);
    boolean level = kind == ChartKind.INDIVIDUALS || kind == ChartKind.EWMA;
    return measure == AlongMeasure.RANGE && level ? aboveZero(chart) : chart;
  }

  /** How a measure is charted, in one sentence. */
  public String settings(AlongMeasure measure) {
    String charts = of(measure).plan().charts().sentence();
    return measure == AlongMeasure.RANGE ? charts + OF_ROOTS : charts;
  }

  private static ChartSnapshot aboveZero(ChartSnapshot chart) {
    return new ChartSnapshot(
        chart.kind(),
        chart.axis(),
        chart.points(),
        chart.limits().stream().map(AlongStatistics::aboveZero).toList(),
        chart.events(),
        chart.specification(),
        chart.totals());
  }

  private static LimitSpan aboveZero(LimitSpan span) {
    Double lower = span.lower();
    return lower == null || lower > 0
        ? span
        : new LimitSpan(
            span.fromNumber(),
            span.toNumber(),
            span.centre(),
            null,
            span.upper(),
            span.frozen(),
            span.phase());
  }

  private JobStatistics judged(AlongMeasure measure) {
    return measure == AlongMeasure.RANGE ? judgedRange : of(measure);
  }

  private JobStatistics of(AlongMeasure measure) {
    JobStatistics found = charted.get(measure);
    if (found == null) {
      throw new IllegalStateException(measure + " is not charted");
    }
    return found;
  }

  @Override
  public byte[] checkpoint() {
    List<byte[]> parts =
        List.of(
            of(AlongMeasure.RANGE).checkpoint(),
            of(AlongMeasure.TREND).checkpoint(),
            judgedRange.checkpoint());
    int size = parts.stream().mapToInt(each -> Integer.BYTES + each.length).sum();
    ByteBuffer into = ByteBuffer.allocate(Integer.BYTES + size).putInt(VERSION);
    parts.forEach(each -> into.putInt(each.length).put(each));
    return into.array();
  }

  /** Throws {@link BadInput} for a checkpoint of another version: then feed all again. */
  public static AlongStatistics restore(byte[] checkpoint) {
    ByteBuffer from = ByteBuffer.wrap(checkpoint);
    int version = from.getInt();
    if (version != VERSION) {
      throw new BadInput("checkpoint", version, "is of another version", String.valueOf(VERSION));
    }
    AlongStatistics statistics = new AlongStatistics();
    statistics.restored(AlongMeasure.RANGE, part(from));
    statistics.restored(AlongMeasure.TREND, part(from));
    statistics.judgedRange = JobStatistics.restore(AlongMeasure.RANGE.plan(), part(from));
    return statistics;
  }

  private static byte[] part(ByteBuffer from) {
    byte[] part = new byte[from.getInt()];
    from.get(part);
    return part;
  }

  private void restored(AlongMeasure measure, byte[] state) {
    charted.put(measure, JobStatistics.restore(measure.plan(), state));
  }
}
