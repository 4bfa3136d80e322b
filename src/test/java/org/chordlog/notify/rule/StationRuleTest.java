package org.chordlog.notify.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.rule.StationFacts.FailedCheck;
import org.chordlog.notify.rule.StationFacts.Gauge;
import org.chordlog.notify.rule.StationFacts.Link;
import org.junit.jupiter.api.Test;

final class StationRuleTest {
  private static final long SECOND = 1_000_000L;
  private static final long MINUTE = 60 * SECOND;
  private static final long DAY = 24 * 60 * MINUTE;
  private static final Gauge WELL = new Gauge(null, null, false, null);

  private static StationFacts lost(String name, boolean working, long since) {
    return new StationFacts(name, working, new Link(true, since, "No such port."), WELL);
  }

  private static List<AlertKey> keys(List<Found> found) {
    return found.stream().map(Found::key).toList();
  }

  private static AlertKey link(String name) {
    return AlertKey.station(AlertKind.LINK_LOST, name);
  }

  @Test
  void aLinkIsToldAfterTenMinutesWhileAJobIsOpen() {
    StationFacts well = new StationFacts("B", true, new Link(false, 0, ""), WELL);
    List<StationFacts> all = List.of(lost("A", true, 0), well, lost("C", false, 0));
    assertEquals(List.of(), StationRule.links(all, 10 * MINUTE - 1));
    List<Found> found = StationRule.links(all, 10 * MINUTE);
    assertEquals(List.of(link("A")), keys(found));
    assertEquals(10.0, found.get(0).evidence().figure(AlertFigure.MINUTES));
    assertEquals("No such port.", found.get(0).evidence().detail());
  }

  private static List<StationFacts> stations(int count, long apart) {
    List<StationFacts> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      all.add(lost("S" + i, true, i * apart));
    }
    return all;
  }

  @Test
  void moreThanFiveWithinAMinuteAreOne() {
    AlertKey network = AlertKey.service(AlertKind.NETWORK_LOST);
    List<StationFacts> six = stations(6, 12 * SECOND);
    assertEquals(List.of(network), keys(StationRule.links(six, MINUTE)));
    six.add(lost("alone", true, 20 * MINUTE));
    List<Found> later = StationRule.links(six, 40 * MINUTE);
    assertEquals(List.of(network, link("alone")), keys(later));
    assertEquals("S0, S1, S2, S3, S4, S5.", later.get(0).evidence().detail());
    assertEquals(6.0, later.get(0).evidence().figure(AlertFigure.STATIONS));
  }

  @Test
  void fiveOrASlowRowAreEachOnItsOwn() {
    assertEquals(5, StationRule.links(stations(5, SECOND), 11 * MINUTE).size());
    List<Found> slow = StationRule.links(stations(6, 13 * SECOND), 12 * MINUTE);
    assertEquals(6, slow.size());
    assertTrue(slow.stream().allMatch(each -> each.key().kind() == AlertKind.LINK_LOST));
  }

  private static StationFacts gauge(boolean working, Gauge gauge) {
    return new StationFacts("A", working, new Link(false, 0, ""), gauge);
  }

  @Test
  void gaugesAreToldOf() {
    long now = 100 * DAY;
    Gauge bad =
        new Gauge(new FailedCheck(2.5, 1000, 40), now + 3 * DAY + 5, true, now - 10 * 60 * MINUTE);
    List<Found> found = StationRule.gauges(List.of(gauge(true, bad)), now);
    assertEquals(
        List.of(AlertKind.GAUGE_UNFIT, AlertKind.CALIBRATION_DUE, AlertKind.ZERO_OLD),
        found.stream().map(each -> each.key().kind()).toList());
    assertEquals(40.0, found.get(0).evidence().figure(AlertFigure.READINGS_IN_DOUBT));
    assertEquals(2.5, found.get(0).evidence().figure(AlertFigure.DEVIATION_MM));
    assertEquals(3.0, found.get(1).evidence().figure(AlertFigure.DAYS_LEFT));
    assertEquals(10.0, found.get(2).evidence().figure(AlertFigure.HOURS));
  }

  @Test
  void anOldZeroMattersOnlyWhereAJobIsOpenAndACalibrationOnlyWhenItEndsSoon() {
    long now = 100 * DAY;
    Gauge stale = new Gauge(null, now + 15 * DAY, true, now - DAY);
    assertEquals(List.of(), StationRule.gauges(List.of(gauge(false, stale)), now));
    assertEquals(1, StationRule.gauges(List.of(gauge(false, stale)), now + 1).size());
  }
}
