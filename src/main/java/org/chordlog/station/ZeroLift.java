package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * How far the plunger was pushed in from free air when that zero was set. It is the same on every
 * flat, as long as the bridge stays on: {@code shiftNm} is by how much it differs from the zero
 * before by more than it may; 0 where nothing is in doubt. {@code readAs} is by which settings
 * values were read; empty where that was not kept.
 */
record ZeroLift(
    long zeroId, long bridgeId, long atMicros, long pushedInNm, long shiftNm, String readAs) {
  /**
   * What dirt, a burr or warmth may move a flat by (common practice, no source). With feet 200 mm
   * apart a flat that is bent to a radius of 100 m shows as much.
   */
  private static final long LEAST_NM = 50_000;

  private static final long LEAST_AIR_NM = 10_000;

  /**
   * Of the permissible error: two zeros and two levels in free air, each within it, are together
   * uncertain by 2/√3 of it, and by 2.3 of it with k = 2; the rest is for the step.
   */
  private static final long ERRORS = 3;

  /** By how much two flats may differ over free air. */
  static long mostNm(Indicator indicator) {
    return Math.max(LEAST_NM, ERRORS * errorNm(indicator));
  }

  /**
   * How far from the free air of a zero is still it, long after: the stop is inside the indicator,
   * and warmth moves it by less than ten micrometres (judgement, no source).
   */
  static long airNm(Indicator indicator) {
    return Math.max(LEAST_AIR_NM, ERRORS * errorNm(indicator));
  }

  private static long errorNm(Indicator indicator) {
    return Length.nm(Math.max(indicator.permissibleErrorMm(), indicator.resolutionMm()));
  }

  boolean doubtful() {
    return shiftNm != 0;
  }

  /**
   * By how much a zero differs from those before it on the same mounting, the newest first; 0 where
   * it agrees with the newest of them, or with the newest one that is not in doubt. The same flat
   * again is no other witness while the bridge was not lifted.
   */
  static long shiftNm(long pushedInNm, List<ZeroLift> before, boolean lifted, long mostNm) {
    @Nullable ZeroLift last = before.stream().findFirst().orElse(null);
    if (last == null || (lifted && Math.abs(pushedInNm - last.pushedInNm()) <= mostNm)) {
      return 0;
    }
    Optional<ZeroLift> trusted = before.stream().filter(each -> !each.doubtful()).findFirst();
    long shift = pushedInNm - trusted.orElse(last).pushedInNm();
    return Math.abs(shift) <= mostNm ? 0 : shift;
  }

  /** What is in doubt about it; null where nothing is. */
  @Nullable Sentence doubt() {
    return doubtful()
        ? Sentence.of(
            "The flat is %s %s over free air than at the last zero: is this really the flat?",
            Quantity.fixed(Length.mm(Math.abs(shiftNm)), 3), shiftNm > 0 ? "higher" : "lower")
        : null;
  }

  String line() {
    return "%s %s %s %s %s %s".formatted(zeroId, bridgeId, atMicros, pushedInNm, shiftNm, readAs);
  }

  static ZeroLift of(String line) {
    String[] parts = line.split(" ", -1);
    return new ZeroLift(
        Long.parseLong(parts[0]),
        Long.parseLong(parts[1]),
        Long.parseLong(parts[2]),
        Long.parseLong(parts[3]),
        Long.parseLong(parts[4]),
        parts.length > 5 ? parts[5] : "");
  }
}
