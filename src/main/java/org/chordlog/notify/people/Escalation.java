package org.chordlog.notify.people;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.alert.AlertPriority;

/**
 * How long an alert that nobody acknowledges waits until the second and the last are told. The
 * usual times are judgement, no source.
 */
public record Escalation(Map<AlertPriority, Waits> waits) {
  public static final Escalation USUAL =
      new Escalation(
          Map.of(
              AlertPriority.HIGH, new Waits(Duration.ofMinutes(30), Duration.ofHours(4)),
              AlertPriority.MEDIUM, new Waits(Duration.ofMinutes(60), Duration.ofHours(4)),
              AlertPriority.LOW, new Waits(Duration.ofHours(8), Duration.ofHours(24))));

  /** Both from when the alert began to wait. */
  public record Waits(Duration second, Duration last) {
    public Waits {
      if (second.isNegative() || second.isZero()) {
        throw new BadInput("secondMinutes", second.toMinutes(), "is too short", "1 or more");
      }
      if (last.compareTo(second) <= 0) {
        throw new BadInput(
            "lastMinutes", last.toMinutes(), "is not after secondMinutes", "a later time");
      }
    }
  }

  /** How far an alert has come. */
  public enum Step {
    FIRST,
    SECOND,
    LAST
  }

  public Escalation {
    waits = Map.copyOf(waits);
    if (waits.size() < AlertPriority.values().length) {
      throw new BadInput("escalation", waits.keySet(), "is incomplete", "high, medium and low");
    }
  }

  /** The same with other times of one priority. */
  public Escalation with(AlertPriority priority, Waits other) {
    Map<AlertPriority, Waits> all = new EnumMap<>(waits);
    all.put(priority, other);
    return new Escalation(all);
  }

  /** Of an alert of that priority that began to wait then. */
  public Step step(AlertPriority priority, Instant since, Instant now) {
    Waits of = waits.getOrDefault(priority, USUAL.waits().get(priority));
    Duration waited = Duration.between(since, now);
    if (of == null || waited.compareTo(of.second()) < 0) {
      return Step.FIRST;
    }
    return waited.compareTo(of.last()) < 0 ? Step.SECOND : Step.LAST;
  }
}
