package org.chordlog.stats;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.SignalKey;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * The running statistics of a job, one characteristic for each position and, with subgroups by
 * piece, one for the whole piece. Feed the readings in the order of their ids and each event after
 * its {@code afterReadingId}; the same order gives the same digits. An update and a snapshot cost
 * the same however long the job is. Not thread-safe.
 */
public final class JobStatistics implements Checkpointed {
  private static final int CHECKPOINT_VERSION = 4;
  private final StatisticsPlan plan;
  private final Characteristics characteristics;
  private final Map<Long, String> exclusions = new HashMap<>();
  private final PositionTally positions = new PositionTally();
  private Set<SignalKey> answered = Set.of();
  private long count;
  private long lastReadingId;

  public JobStatistics(StatisticsPlan plan) {
    this(plan, new Characteristics(plan, null));
  }

  private JobStatistics(StatisticsPlan plan, Characteristics characteristics) {
    this.plan = plan;
    this.characteristics = characteristics;
  }

  /**
   * Of the same plan and without readings yet: judges every point by the limits that the given one
   * came to over all readings, which are to be fed again. For one phase, and not checkpointed.
   */
  public static JobStatistics judgedBy(JobStatistics all) {
    return new JobStatistics(all.plan, new Characteristics(all.plan, all.characteristics));
  }

  /** How this job is charted and judged. */
  public StatisticsPlan plan() {
    return plan;
  }

  /**
   * Notes that a reading is left out, or with an empty reason that it counts again. False if that
   * reading has been taken in already: then start anew, note all exclusions in force and replay.
   */
  public boolean exclude(long readingId, String reason) {
    if (readingId <= lastReadingId) {
      return false;
    }
    if (reason.isEmpty()) {
      exclusions.remove(readingId);
    } else {
      exclusions.put(readingId, reason);
    }
    return true;
  }

  /** Takes in the next reading; {@link BadInput} unless its id rises. */
  public void add(Observation seen) {
    if (seen.readingId() <= lastReadingId) {
      throw new BadInput(
          "readingId", seen.readingId(), "is not in order", "above " + lastReadingId);
    }
    String exclusion = exclusions.getOrDefault(seen.readingId(), "");
    exclusions.remove(seen.readingId());
    lastReadingId = seen.readingId();
    count++;
    characteristics.add(seen, exclusion);
    if (exclusion.isEmpty()) {
      positions.add(seen);
    }
  }

  @Override
  public void happened(JobEvent event) {
    characteristics.happened(event);
  }

  /** As an event that begins a phase does; for records that tell no more than where one begins. */
  public void startPhase() {
    characteristics.startPhase();
  }

  /** Names of the characteristics, the first being the one to show. */
  public List<String> characteristics() {
    return characteristics.names();
  }

  /** The charts that a characteristic has. */
  public Set<ChartKind> kinds(String characteristic) {
    return characteristics.find(characteristic).kinds();
  }

  /** One chart as it is now; {@link BadInput} for one that the characteristic does not have. */
  public ChartSnapshot chart(String characteristic, ChartKind kind) {
    Characteristic found = characteristics.find(characteristic);
    if (!found.kinds().contains(kind)) {
      throw new BadInput("kind", kind, "is not among this job's charts", found.kinds().toString());
    }
    return found.chart(kind);
  }

  /**
   * Whether a characteristic is in control since its last change, but for the signals that {@link
   * #answer} named.
   */
  public ControlVerdict control(String characteristic) {
    Characteristic found = characteristics.find(characteristic);
    found.answer(answered);
    return found.control();
  }

  /**
   * Signals whose cause was found and dealt with: they hold no verdict and stay in the record. Not
   * part of the checkpoint: to be told again after a restore.
   */
  public void answer(Set<SignalKey> signals) {
    answered = Set.copyOf(signals);
  }

  /** All figures of a characteristic, over the job or since its last change. */
  public Summary summary(String characteristic, Scope scope) {
    Characteristic found = characteristics.find(characteristic);
    found.answer(answered);
    return found.summary(characteristic, scope);
  }

  /** The newest values of a characteristic in classes, with fitted curves. */
  public DistributionSnapshot distribution(String characteristic, Scope scope) {
    return characteristics.find(characteristic).distribution(scope);
  }

  /** The positions side by side; empty with fewer than two. */
  public Optional<PositionsSnapshot> comparison() {
    List<Summary> summaries =
        characteristics.names().stream()
            .filter(name -> !name.equals(StatisticsPlan.WHOLE_PIECE))
            .map(name -> summary(name, Scope.JOB))
            .toList();
    return summaries.size() < 2
        ? Optional.empty()
        : Optional.of(PositionsSnapshot.of(plan, summaries));
  }

  /** How each position differs from the mean of its piece; empty with fewer than two positions. */
  public List<PositionEffect> positionEffects() {
    return positions.effects();
  }

  /** Readings taken in, excluded ones too. */
  public long count() {
    return count;
  }

  /** Id of the newest reading taken in, 0 before the first. */
  public long lastReadingId() {
    return lastReadingId;
  }

  /** The whole state, to be restored with an equal plan; its size does not grow with the job. */
  @Override
  public byte[] checkpoint() {
    Packer packer = new Packer().put(CHECKPOINT_VERSION).put(plan.text());
    packer.put(count).put(lastReadingId).put(exclusions.size());
    exclusions.forEach((id, reason) -> packer.put(id).put(reason));
    positions.pack(packer);
    characteristics.pack(packer);
    return packer.bytes();
  }

  /** Throws {@link BadInput} for a checkpoint of another plan or version: then replay. */
  public static JobStatistics restore(StatisticsPlan plan, byte[] checkpoint) {
    Unpacker from = new Unpacker(checkpoint);
    if (from.anInt() != CHECKPOINT_VERSION || !from.text().equals(plan.text())) {
      throw new BadInput("checkpoint", "it", "is of another plan or version", "one of this plan");
    }
    JobStatistics statistics = new JobStatistics(plan);
    statistics.unpack(from);
    return statistics;
  }

  private void unpack(Unpacker from) {
    count = from.aLong();
    lastReadingId = from.aLong();
    int excluded = from.anInt();
    for (int i = 0; i < excluded; i++) {
      exclusions.put(from.aLong(), from.text());
    }
    positions.unpack(from);
    characteristics.unpack(from);
  }
}
