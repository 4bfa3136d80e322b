package org.chordlog.capture;

import static org.chordlog.measure.CaptureMode.EXTREMUM;
import static org.chordlog.measure.CaptureMode.SETTLED;
import static org.chordlog.measure.CaptureMode.TRIGGER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Offered;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.capture.CaptureOutcome.Withdrawn;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Synthetic traces and what is taken from them; step 0.01 mm, free air at -6 mm, 20 Hz. */
final class CaptureTableTest {
  private static final double STEP = 0.01;
  private static final double FREE = -6;
  private static final Indicator INDICATOR = new Indicator(STEP, 0.02, 12.5);

  private static Trace free() {
    return new Trace(STEP, 20, 3).noise(0.3).jitter(0.2).hold(FREE, 1);
  }

  private static Trace touch(Trace trace, double mm) {
    return trace.ramp(mm, 0.4).hold(mm, 1.2).ramp(FREE, 0.3).hold(FREE, 0.8);
  }

  static Stream<Arguments> traces() {
    return Stream.of(
        Arguments.of("one piece", SETTLED, touch(free(), 2.73), "2.7"),
        Arguments.of("the same piece again", SETTLED, touch(touch(free(), 2.73), 2.73), "2.7 2.7"),
        Arguments.of("a flat shown as steps alone", SETTLED, touch(free().noise(0), 0), "0.0"),
        Arguments.of(
            "lifted half way only and set down",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 1.2).ramp(-4, 0.3).ramp(2.5, 0.3).hold(2.5, 1.2),
            "2.0 2.5"),
        Arguments.of("it stays for long", SETTLED, free().ramp(2, 0.4).hold(2, 60), "2.0"),
        Arguments.of(
            "slid along the piece without lifting",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 1.2).ramp(2.2, 0.5).hold(2.2, 2),
            "2.0 or 2.2"),
        Arguments.of(
            "ringing, then rest",
            SETTLED,
            free().ramp(2, 0.3).follow(t -> 2 + 0.3 * Math.exp(-6 * t) * Math.cos(40 * t), 2.5),
            "2.0"),
        Arguments.of(
            "removed while it settles",
            SETTLED,
            touch(free().ramp(2, 0.1).hold(2, 0.2).ramp(FREE, 0.1).hold(FREE, 0.8), 2.5),
            "TOO_SHORT 2.5"),
        Arguments.of(
            "lifted when it had rested for long enough, but no longer",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 0.55).ramp(FREE, 0.3).hold(FREE, 0.8),
            "2.0"),
        Arguments.of(
            "two such rests at different values",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 0.5).ramp(2.6, 0.1).hold(2.6, 0.5).ramp(FREE, 0.3),
            "TOO_SHORT"),
        Arguments.of(
            "never at rest",
            SETTLED,
            free().ramp(2, 0.4).swing(2, 0.5, 0.83, 4).ramp(FREE, 0.2).hold(FREE, 0.5),
            "MOVED"),
        Arguments.of(
            "no rest within the time-out",
            SETTLED,
            free().ramp(2, 0.4).swing(2, 0.5, 0.83, 16),
            "MOVED"),
        Arguments.of(
            "set down badly, then put right for longer",
            SETTLED,
            free().ramp(2.6, 0.4).hold(2.6, 0.9).ramp(2, 0.3).hold(2, 1.5).ramp(FREE, 0.3),
            "2.6 or 2.0"),
        Arguments.of(
            "a section that runs past",
            SETTLED,
            free().ramp(2, 0.4).follow(t -> 2 + 0.1 * Math.sin(t / 8) + 0.03 * Math.sin(t), 60),
            "2.0 WITHDRAWN"),
        Arguments.of(
            "drifts without end", SETTLED, free().ramp(2, 0.4).ramp(3, 10).hold(FREE, 1), "MOVED"),
        Arguments.of(
            "a frozen device is told after the fact",
            SETTLED,
            free().noise(0).ramp(2, 0.4).hold(2, 130),
            "2.0 STUCK"),
        Arguments.of(
            "a frozen device in free air is only free air",
            SETTLED,
            touch(free().noise(0).hold(FREE, 200), 2),
            "2.0"),
        Arguments.of(
            "a gap while it rests",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 0.3).silence(2).hold(2, 1.2),
            "2.0"),
        Arguments.of(
            "a gap after it was taken",
            SETTLED,
            free().ramp(2, 0.4).hold(2, 1.2).silence(5).hold(2, 2),
            "2.0"),
        Arguments.of(
            "it starts standing on a piece",
            SETTLED,
            touch(new Trace(STEP, 20, 3).hold(2, 2).ramp(FREE, 0.3).hold(FREE, 0.8), 2.5),
            "2.5"),
        Arguments.of("beyond the travel", SETTLED, touch(free(), 7), "OUTSIDE_TRAVEL"),
        Arguments.of(
            "the indicator is zeroed in free air",
            SETTLED,
            touch(touch(free(), 2).hold(0, 1).ramp(8.5, 0.4).hold(8.5, 1.2).hold(0, 1), 8.6),
            "2.0 0.0 8.5 8.6"),
        Arguments.of(
            "rocked five times",
            EXTREMUM,
            free()
                .ramp(2, 0.4)
                .follow(t -> 2 - 0.4 * Math.pow(Math.sin(Math.PI * t / 1.2), 2), 6)
                .ramp(FREE, 0.2)
                .hold(FREE, 0.5),
            "2.0"),
        Arguments.of(
            "set down and lifted at once",
            EXTREMUM,
            free().ramp(2, 0.1).ramp(FREE, 0.1).hold(FREE, 0.5),
            "TOO_SHORT"),
        Arguments.of("nobody asks", TRIGGER, touch(free(), 2), ""));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("traces")
  void takes(String name, CaptureMode mode, Trace trace, String expected) {
    Capture capture = Captures.of(CaptureOptions.of(mode).settings(INDICATOR));
    assertEquals(expected, said(trace.through(capture)), name);
  }

  private static String said(List<CaptureOutcome> outcomes) {
    return String.join(" ", outcomes.stream().map(CaptureTableTest::said).toList());
  }

  /** A value to a tenth of a millimetre, or the reason. */
  private static String said(CaptureOutcome outcome) {
    if (outcome instanceof Rejected rejected) {
      return rejected.reason().name();
    }
    if (outcome instanceof Withdrawn) {
      return "WITHDRAWN";
    }
    if (outcome instanceof Offered offered) {
      return "or " + tenths(offered.depth().valueNm());
    }
    return tenths(((Captured) outcome).depth().valueNm());
  }

  private static String tenths(long nm) {
    double mm = nm / 1e6;
    return String.valueOf(Math.abs(Math.round(mm * 10)) * Math.signum(mm) / 10 + 0.0);
  }

  /** Asked when the first trace has been seen; the second one follows. */
  private static String asked(Trace trace, int after) {
    Capture capture = Captures.of(CaptureOptions.of(TRIGGER).settings(INDICATOR));
    List<CaptureOutcome> outcomes = new ArrayList<>();
    List<Sample> samples = trace.samples();
    for (int i = 0; i < samples.size(); i++) {
      capture.offer(samples.get(i), outcomes::add);
      if (i == after) {
        capture.trigger(samples.get(i).monotonicNanos(), outcomes::add);
      }
    }
    return said(outcomes);
  }

  @Test
  void aTriggerTakesTheRestThatLastsOrTheNextOne() {
    Trace resting = free().ramp(2, 0.4).hold(2, 1);
    assertEquals("2.0", asked(resting, resting.samples().size() - 1));
    Trace later = touch(touch(free(), 2.5), 2);
    assertEquals("2.0", asked(later, 70), "asked in free air before it was set down");
    assertEquals("MOVED", asked(free().ramp(2, 0.4).swing(2, 0.5, 0.8, 17), 30));
    assertEquals("FREE_AIR", asked(touch(free(), 2).hold(FREE, 17), 70));
  }

  @Test
  void aTriggerIsRefusedWhenNoValueComesAndTooSoonAfterAnother() {
    Capture capture = Captures.of(CaptureOptions.of(TRIGGER).settings(INDICATOR));
    List<CaptureOutcome> outcomes = free().ramp(2, 0.4).hold(2, 1).through(capture);
    long last = 2_400_000_000L;
    capture.trigger(last, outcomes::add);
    capture.trigger(last + 10_000_000, outcomes::add);
    capture.trigger(last + 5_000_000_000L, outcomes::add);
    assertEquals("2.0 REPEATED GAP", said(outcomes));
  }

  @Test
  void aTriggerThatWaitsIsAnsweredThoughNoValueComesAnyMore() {
    Capture capture = Captures.of(CaptureOptions.of(TRIGGER).settings(INDICATOR));
    List<CaptureOutcome> outcomes = touch(free(), 2).through(capture);
    capture.trigger(3_700_000_000L, outcomes::add);
    capture.elapsed(10_000_000_000L);
    assertEquals("", said(outcomes));
    capture.elapsed(19_000_000_000L);
    assertEquals("GAP", said(outcomes));
  }

  @Test
  void theButtonOfTheIndicatorTakesItsFrame() {
    Capture capture = Captures.of(CaptureOptions.of(TRIGGER).settings(INDICATOR));
    List<CaptureOutcome> outcomes = new ArrayList<>();
    capture.offer(new Sample(1, 0, 0, 2_000_000, 0, true), outcomes::add);
    capture.offer(new Sample(2, 50_000_000, 0, 2_100_000, 0, false), outcomes::add);
    capture.offer(new Sample(3, 900_000_000, 0, 2_200_000, 0, true), outcomes::add);
    assertEquals("2.0 2.2", said(outcomes));
  }

  @Test
  void afterAResetNothingIsTakenTwice() {
    Capture capture = Captures.of(CaptureOptions.of(SETTLED).settings(INDICATOR));
    List<CaptureOutcome> outcomes = free().ramp(2, 0.4).hold(2, 1.2).through(capture);
    capture.reset();
    outcomes.addAll(new Trace(STEP, 20, 4).hold(2, 3).through(capture));
    assertEquals("2.0", said(outcomes));
  }

  @Test
  void aBandBelowOneStepIsRefused() {
    CaptureOptions narrow = new CaptureOptionsBuilder(SETTLED).bandMm(0.005).build();
    BadInput refusal = assertThrows(BadInput.class, () -> narrow.settings(INDICATOR));
    assertEquals("capture.bandMm", refusal.faults().get(0).field());
  }

  @ParameterizedTest
  @EnumSource(CaptureMode.class)
  void theReadmeHasARowOfEachMode(CaptureMode mode) throws IOException {
    String readme = Files.readString(Path.of("src/docs/stations.md"));
    assertTrue(readme.contains("| `" + mode + "` |"));
  }
}
