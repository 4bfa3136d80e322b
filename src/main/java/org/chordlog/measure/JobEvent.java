package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * Something that happened between two readings of a job. {@code afterReadingId} is the last reading
 * before it (0: none).
 */
public record JobEvent(
    long id,
    long jobId,
    String machine,
    Kind kind,
    long afterReadingId,
    Content content,
    Recorded recorded) {
  public enum Kind {
    CORRECTION,
    MATERIAL_LOT,
    SET_UP,
    ZERO,
    LIMITS_FROZEN,
    LIMITS_RELEASED,
    NOTE,
    BRIDGE
  }

  /**
   * What was changed. A correction carries the roll setting before and after, in the machine's own
   * unit.
   */
  public record Content(
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note) {}

  /** The same after another reading. */
  public JobEvent after(long readingId) {
    return new JobEvent(id, jobId, machine, kind, readingId, content, recorded);
  }

  /** Whether the charts start a new phase after it. */
  public boolean startsPhase() {
    return kind == Kind.CORRECTION || kind == Kind.MATERIAL_LOT || kind == Kind.SET_UP;
  }

  /** Whether the rollers were set otherwise. */
  public boolean movesRollers() {
    return kind == Kind.CORRECTION || kind == Kind.SET_UP;
  }

  /** Zero and bridge stay what the station measures with; a new one takes their place. */
  public boolean canBeTakenBack() {
    return kind != Kind.ZERO && kind != Kind.BRIDGE;
  }

  public @Nullable Double settingBefore() {
    return content.settingBefore();
  }

  public @Nullable Double settingAfter() {
    return content.settingAfter();
  }

  public String materialLot() {
    return content.materialLot();
  }

  public String note() {
    return content.note();
  }

  public long atMicros() {
    return recorded.atMicros();
  }

  public String by() {
    return recorded.by();
  }
}
