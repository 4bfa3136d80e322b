package org.chordlog.capture;

import java.util.Locale;

/**
 * What a stream shows that can't physically be: the plunger's stop is fixed steel, so what is shown
 * in free air does not change by itself.
 *
 * @param sinceNanos when the free air was last seen as it should be; readings taken since are in
 *     doubt
 * @param fromNm what was shown
 * @param toNm what is shown instead
 */
public record StreamDoubt(Kind kind, long monotonicNanos, long sinceNanos, long fromNm, long toNm) {
  /** What has happened. */
  public enum Kind {
    /** The indicator was zeroed, or a preset was set. */
    ZERO_MOVED,
    /** The counting direction was changed. */
    DIRECTION,
    /** The unit was changed, where frames do not name it. */
    UNIT,
    /** Direction or unit are again what they were. */
    RESTORED,
    /** The value has not changed by one step for minutes, where noise had moved it before. */
    FROZEN;

    /** Whether nothing can be measured until somebody sets it back. */
    public boolean forbidsReadings() {
      return this == DIRECTION || this == UNIT;
    }
  }

  /** What was seen, in one sentence. */
  public String sentence() {
    String change =
        String.format(Locale.ROOT, "%+.3f mm instead of %+.3f mm", toNm / 1e6, fromNm / 1e6);
    return switch (kind) {
      case ZERO_MOVED ->
          "The indicator shows "
              + change
              + " in free air: it was zeroed, or a preset was set. The zero is void.";
      case DIRECTION -> "The indicator shows " + change + ": its counting direction was changed.";
      case UNIT -> "The indicator shows " + change + ": its unit or resolution was changed.";
      case RESTORED -> "The indicator shows what it showed before.";
      case FROZEN ->
          "The value has not changed by one step for minutes: the indicator may be frozen.";
    };
  }

  /** What to do about it, in one sentence. */
  public String advice() {
    return switch (kind) {
      case ZERO_MOVED -> "Stand the bridge on the flat and set zero.";
      case DIRECTION, UNIT -> "Set it back with the indicator's key.";
      case RESTORED -> "";
      case FROZEN ->
          "Push the plunger in by hand; if the value stays, switch the indicator off and on.";
    };
  }
}
