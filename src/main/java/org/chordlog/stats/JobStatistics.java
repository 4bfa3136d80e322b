package org.chordlog.stats;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SubgroupRule;
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
import org.jspecify.annotations.Nullable;

/**
 * The running statistics of a job, one characteristic for each position and, with subgroups by
 * piece, one for the whole piece. Feed the readings in the order of their ids and each event after
 * its {@code afterReadingId}; the same order gives the same digits. An update and a snapshot cost
 * the same however long the job is. Not thread-safe.
 */
public final class JobStatistics implements Checkpointed {
  private static final int CHARACTERISTICS = 100;
  private static final int CHECKPOINT_VERSION = 2;
  private final StatisticsPlan plan;
  private final Map<String, Characteristic> characteristics = new LinkedHashMap<>();
  private final Map<Long, String> exclusions = new HashMap<>();
  private final PositionTally positions = new PositionTally();
  private Set<SignalKey> answered = Set.of();
  private @Nullable JobStatistics all;
  private long count;
  private long lastReadingId;

  public JobStatistics(StatisticsPlan plan) {
    this.plan = plan;
    if (byPiece()) {
      characteristics.put(StatisticsPlan.WHOLE_PIECE, new Characteristic(plan));
    }
    if (!byPiece() || plan.positions().size() > 1) {
      plan.positions().forEach(this::position);
    }
  }

  /**
   * Of the same plan and without readings yet: judges every point by the limits that the given one
   * came to over all readings, which are to be fed again. For one phase, and not checkpointed.
   */
  public static JobStatistics judgedBy(JobStatistics all) {
    JobStatistics statistics = new JobStatistics(all.plan);
    statistics.all = all;
    statistics.characteristics.forEach(
        (name, own) -> own.judgeBy(Objects.requireNonNull(all.characteristics.get(name))));
    return statistics;
  }

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

  public void add(Observation seen) {
    if (seen.readingId() <= lastReadingId) {
      throw new BadInput(
          "readingId", seen.readingId(), "is not in order", "above " + lastReadingId);
    }
    String exclusion = exclusions.getOrDefault(seen.readingId(), "");
    exclusions.remove(seen.readingId());
    lastReadingId = seen.readingId();
    count++;
    if (byPiece()) {
      find(StatisticsPlan.WHOLE_PIECE).add(seen, exclusion);
    }
    if (!byPiece() || plan.positions().size() > 1) {
      position(seen.position()).add(seen, exclusion);
    }
    if (exclusion.isEmpty()) {
      positions.add(seen);
    }
  }

  @Override
  public void happened(JobEvent event) {
    characteristics.values().forEach(each -> each.happened(event));
  }

  /** Names of the characteristics, the first being the one to show. */
  public List<String> characteristics() {
    return List.copyOf(characteristics.keySet());
  }

  public Set<ChartKind> kinds(String characteristic) {
    return find(characteristic).kinds();
  }

  public ChartSnapshot chart(String characteristic, ChartKind kind) {
    Characteristic found = find(characteristic);
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
    Characteristic found = find(characteristic);
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

  public Summary summary(String characteristic, Scope scope) {
    Characteristic found = find(characteristic);
    found.answer(answered);
    return found.summary(characteristic, scope);
  }

  /** The newest values of a characteristic in classes, with fitted curves. */
  public DistributionSnapshot distribution(String characteristic, Scope scope) {
    return find(characteristic).distribution(scope);
  }

  /** The positions side by side; empty with fewer than two. */
  public Optional<PositionsSnapshot> comparison() {
    List<Summary> summaries =
        characteristics.keySet().stream()
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
    packer.put(characteristics.size());
    characteristics.forEach((name, each) -> each.pack(packer.put(name)));
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
    int kept = from.anInt();
    for (int i = 0; i < kept; i++) {
      String name = from.text();
      (name.equals(StatisticsPlan.WHOLE_PIECE) ? find(name) : position(name)).unpack(from);
    }
  }

  private boolean byPiece() {
    return plan.subgroups().kind() == SubgroupRule.Kind.PIECE;
  }

  private Characteristic position(String name) {
    if (characteristics.size() >= CHARACTERISTICS && !characteristics.containsKey(name)) {
      throw new BadInput("position", name, "is one too many", "up to " + CHARACTERISTICS);
    }
    return characteristics.computeIfAbsent(name, this::newCharacteristic);
  }

  private Characteristic newCharacteristic(String name) {
    Characteristic own = new Characteristic(positionPlan());
    Characteristic whole = all == null ? null : all.characteristics.get(name);
    if (whole != null) {
      own.judgeBy(whole);
    }
    return own;
  }

  private StatisticsPlan positionPlan() {
    return byPiece() ? plan.withSubgroups(new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)) : plan;
  }

  private Characteristic find(String name) {
    Characteristic found = characteristics.get(name);
    if (found == null) {
      throw new BadInput(
          "characteristic", name, "does not exist in this job", characteristics().toString());
    }
    return found;
  }
}
