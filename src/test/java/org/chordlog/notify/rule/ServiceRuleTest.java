package org.chordlog.notify.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

final class ServiceRuleTest {
  private static final long HOUR = 3_600_000_000L;
  private static final long NOW = 1_000 * HOUR;

  private static List<AlertKind> kinds(ServiceFacts facts) {
    return ServiceRule.found(facts, NOW).stream().map(each -> each.key().kind()).toList();
  }

  private static ServiceFacts facts(
      String fault, long lost, long free, @Nullable Long backup, @Nullable Long days) {
    return new ServiceFacts(fault, lost, List.of(), free, backup, days);
  }

  @Test
  void whatIsWellOrNotKnownIsNotTold() {
    assertEquals(List.of(), kinds(facts("", 0, 2_000_000_000L, null, null)));
    assertEquals(List.of(), kinds(facts("", 0, 2_000_000_000L, NOW - 48 * HOUR, 14L)));
  }

  @Test
  void whatIsNotWellIsTold() {
    assertEquals(
        List.of(
            AlertKind.READINGS_NOT_KEPT,
            AlertKind.DISK_LOW,
            AlertKind.BACKUP_OLD,
            AlertKind.CERTIFICATE_ENDS),
        kinds(facts("the disk is full", 0, 1_999_999_999L, NOW - 48 * HOUR - 1, 13L)));
    assertEquals(
        List.of(AlertKind.READINGS_NOT_KEPT), kinds(facts("", 3, 9_000_000_000L, null, null)));
  }

  @Test
  void anAlteredRecordIsToldWithItsFirstFault() {
    List<String> faults = List.of("seal: reading 7 was altered", "seal: change 2 was removed");
    Found found =
        ServiceRule.found(new ServiceFacts("", 0, faults, 9_000_000_000L, null, null), NOW).get(0);
    assertEquals("First: seal: reading 7 was altered.", found.evidence().detail());
    assertEquals(2.0, found.evidence().figure(AlertFigure.FAULTS));
  }
}
