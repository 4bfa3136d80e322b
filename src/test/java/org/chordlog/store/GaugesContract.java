package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Change;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.NullSource;

/** Bridges, zeros, calibrations, masters and checks. */
public abstract class GaugesContract extends StoreContract {
  protected GaugesContract(Opener opener) {
    super(opener);
  }

  @Test
  void aReplacedBridgeIsNoLongerInUseButStillThere() {
    Bridge first = store.gauges().add(Some.bridge("200"), "me");
    Bridge other = store.gauges().add(Some.bridge("300"), "me");
    Bridge changed = store.gauges().replace(first.id(), Some.bridge("201"), "you", "turned");
    reopen();
    assertEquals(List.of(other, changed), store.gauges().bridges());
    assertEquals(first, store.gauges().bridge(first.id()).orElseThrow());
    assertEquals(Optional.empty(), store.gauges().bridge(99));
    assertEquals(
        List.of("bridge 201 you turned", "bridge 300 me new", "bridge 200 me new"),
        store.changes().list(Long.MAX_VALUE, 10).stream()
            .map(c -> c.what() + " " + c.by() + " " + c.why())
            .toList());
  }

  @ParameterizedTest
  @EnumSource(FootKind.class)
  @NullSource
  void aBridgeKeepsTheKindOfItsFeet(@Nullable FootKind kind) {
    Bridge kept =
        store
            .gauges()
            .add(
                new Bridge(0, "b", new Bridge.Span(200, 0.01), new Bridge.Feet(5, 0, kind), 0.5),
                "me");
    assertEquals(kind, kept.footKind());
    assertEquals(kept, store.gauges().bridge(kept.id()).orElseThrow());
  }

  @Test
  void theBridgeMountedLastIsOnTheStation() {
    Bridge first = store.gauges().add(Some.bridge("200"), "me");
    Bridge second = store.gauges().add(Some.bridge("300"), "me");
    assertEquals(Optional.empty(), store.gauges().mountedOn("A"));
    store.gauges().mount("A", second.id(), 5, "me");
    store.gauges().mount("A", first.id(), 4, "me");
    reopen();
    assertEquals(first, store.gauges().mountedOn("A").orElseThrow());
    assertEquals(Optional.empty(), store.gauges().mountedOn("B"));
  }

  @Test
  void aZeroHoldsUntilAnotherBridgeIsPutOn() {
    Bridge first = store.gauges().add(Some.bridge("200"), "me");
    Bridge second = store.gauges().add(Some.bridge("300"), "me");
    store.gauges().mount("A", first.id(), 5, "me");
    Zero zero = store.gauges().add(new Zero(0, "A", first.id(), -5, 2, 20, new Recorded(7, "me")));
    store.gauges().mount("A", first.id(), 8, "me");
    store.gauges().mount("B", second.id(), 9, "me");
    reopen();
    assertEquals(new Mounted(first, null), store.gauges().mounted("A").orElseThrow());
    assertEquals(zero, store.gauges().zeroOfMounted("A").orElseThrow());
    store.gauges().mount("A", second.id(), 10, "me");
    assertEquals(Optional.empty(), store.gauges().zeroOfMounted("A"));
    store.gauges().mount("A", first.id(), 11, "me");
    reopen();
    assertEquals(new Mounted(first, 10L), store.gauges().mounted("A").orElseThrow());
    assertEquals(Optional.empty(), store.gauges().zeroOfMounted("A"));
    Zero anew = store.gauges().add(new Zero(0, "A", first.id(), -5, 2, 20, new Recorded(12, "me")));
    assertEquals(anew, store.gauges().zeroOfMounted("A").orElseThrow());
    assertEquals(Optional.empty(), store.gauges().mounted("C"));
  }

  @Test
  void zerosComeNewestFirst() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    Zero first =
        store.gauges().add(new Zero(0, "A", bridge.id(), -5, 2, 20, new Recorded(7, "me")));
    Zero second =
        store.gauges().add(new Zero(0, "A", bridge.id(), -6, 0, 1, new Recorded(6, "you")));
    store.gauges().add(new Zero(0, "B", bridge.id(), -7, 0, 1, new Recorded(8, "me")));
    reopen();
    assertEquals(second, store.gauges().latestZero("A").orElseThrow());
    assertEquals(List.of(second, first), store.gauges().zeros("A", 10));
    assertEquals(List.of(second), store.gauges().zeros("A", 1));
    long at = first.takenAtMicros();
    assertTrue(store.gauges().zeros("A", at, at).contains(first));
    assertEquals(List.of(), store.gauges().zeros("B", at, at));
    assertEquals(List.of(), store.gauges().zeros("A", 1_000, 2_000));
    assertEquals(Optional.empty(), store.gauges().latestZero("C"));
  }

  @Test
  void aCalibrationComesBackBitForBit() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    Calibration first = store.gauges().add(Some.calibration(bridge.id()));
    Calibration second = store.gauges().add(Some.calibration(bridge.id()));
    reopen();
    assertEquals(second, store.gauges().latestCalibration("A", bridge.id()).orElseThrow());
    assertEquals(List.of(second, first), store.gauges().calibrations(10));
    assertEquals(Some.calibration(bridge.id()).covariance(), first.covariance());
    assertEquals(Double.POSITIVE_INFINITY, first.degreesOfFreedom());
    assertEquals(Optional.empty(), store.gauges().latestCalibration("B", bridge.id()));
  }

  @Test
  void checksKeepAMasterThatReadFlat() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    Master disc = store.gauges().add(new Master(0, "disc", Face.OUTER, 1800.25, 0.08), "me");
    Master ring = store.gauges().add(new Master(0, "ring", Face.INNER, 900.5, 0.05), "me");
    InterimCheck passed = store.gauges().add(check(bridge, disc, 1801.5, true));
    InterimCheck flat = store.gauges().add(check(bridge, disc, null, false));
    reopen();
    assertEquals(List.of(disc, ring), store.gauges().masters());
    assertEquals(List.of(flat, passed), store.gauges().checks("A", bridge.id(), 10));
    assertEquals(List.of(flat), store.gauges().checks("A", bridge.id(), 1));
    assertEquals(List.of(), store.gauges().checks("B", bridge.id(), 10));
  }

  @Test
  void whoAddedAMasterOrBroughtACalibrationIsOnRecord() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    Master disc = store.gauges().add(new Master(0, "disc", Face.OUTER, 1800.25, 0.08, 0.75), "Ann");
    List<Master> rings =
        store
            .gauges()
            .importMasters(
                List.of(
                    new Master(0, "ring", Face.INNER, 900.5, 0.05),
                    new Master(0, "shell", Face.INNER, 1200, 0)),
                "Bo");
    Calibration own = store.gauges().add(Some.calibration(bridge.id()));
    List<Calibration> brought =
        store.gauges().importCalibrations(List.of(Some.calibration(bridge.id())), "Cy");
    reopen();
    assertEquals(List.of(disc, rings.get(0), rings.get(1)), store.gauges().masters());
    assertEquals(List.of(brought.get(0), own), store.gauges().calibrations(10));
    List<Change> changes = store.changes().list(Long.MAX_VALUE, 10);
    assertEquals(
        List.of(
            "calibration of A by Cy, from a file",
            "master shell by Bo, from a file",
            "master ring by Bo, from a file",
            "master disc by Ann, new",
            "bridge 200 by me, new"),
        changes.stream().map(c -> c.what() + " by " + c.by() + ", " + c.why()).toList());
    Change ofDisc = changes.get(3);
    assertTrue(ofDisc.to().contains("\"radiusMm\":1800.25"), ofDisc.to());
    assertTrue(ofDisc.to().contains("\"checkLimitMm\":0.75"), ofDisc.to());
    assertTrue(ofDisc.atMicros() > 0);
    assertTrue(changes.get(0).to().contains("\"takenBy\":\"me\""), changes.get(0).to());
  }

  @Test
  void anImportWithOneFaultLeavesNothing() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    List<Calibration> oneWrong =
        List.of(Some.calibration(bridge.id()), Some.calibration(bridge.id() + 1));
    assertThrows(BadInput.class, () -> store.gauges().importCalibrations(oneWrong, "Cy"));
    reopen();
    assertEquals(List.of(), store.gauges().calibrations(10));
    assertEquals(1, store.changes().list(Long.MAX_VALUE, 10).size());
  }

  private static InterimCheck check(
      Bridge bridge, Master master, @Nullable Double radius, boolean passed) {
    return new InterimCheck(
        0,
        "A",
        bridge.id(),
        master.id(),
        new InterimCheck.Comparison(radius, master.radiusMm(), 3, passed),
        new Recorded(7, "me"));
  }

  @Test
  void whatNamesABridgeThatDoesNotExistIsRefused() {
    Bridge bridge = Some.bridge("200");
    assertThrows(BadInput.class, () -> store.gauges().mount("A", 77, 5, "me"));
    assertThrows(BadInput.class, () -> store.gauges().replace(77, bridge, "me", "why"));
    assertThrows(
        BadInput.class,
        () -> store.gauges().add(new Zero(0, "A", 77, -5, 2, 20, new Recorded(7, "me"))));
    assertThrows(BadInput.class, () -> store.gauges().add(Some.calibration(77)));
    assertEquals(List.of(), store.gauges().bridges());
    assertEquals(List.of(), store.changes().list(Long.MAX_VALUE, 10));
  }
}
