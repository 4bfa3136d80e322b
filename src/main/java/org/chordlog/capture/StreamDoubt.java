package org.chordlog.capture;

import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

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

  /** The same, with the values as an indicator of that direction shows them. */
  public StreamDoubt shownBy(Direction direction) {
    return new StreamDoubt(
        kind, monotonicNanos, sinceNanos, direction.shownNm(fromNm), direction.shownNm(toNm));
  }

  /** What was seen, in one sentence. */
  public Sentence sentence() {
    Sentence change = Sentence.of("%s instead of %s", shown(toNm), shown(fromNm));
    return switch (kind) {
      case ZERO_MOVED ->
          Sentence.of(
              "The indicator shows %s in free air: it was zeroed, or a preset was set. The zero is"
                  + " void.",
              change);
      case DIRECTION ->
          Sentence.of("The indicator shows %s: its counting direction was changed.", change);
      case UNIT ->
          Sentence.of("The indicator shows %s: its unit or resolution was changed.", change);
      case RESTORED -> Sentence.plain("The indicator shows what it showed before.");
      case FROZEN ->
          Sentence.plain(
              "The value has not changed by one step for minutes: the indicator may be frozen.");
    };
  }

  private static Quantity shown(long nm) {
    return Quantity.fixed(Length.mm(nm), 3).withSign();
  }

  /** What was seen and what to do about it. */
  public Sentence words() {
    return sentence().and(Sentence.plain(advice()));
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
