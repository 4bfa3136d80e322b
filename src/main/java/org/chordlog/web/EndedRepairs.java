package org.chordlog.web;

import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Alerts;
import org.chordlog.verdict.Words;

/** Alerts that are out of service come back when the log book says that the repair is over. */
record EndedRepairs(Alerts alerts, Stations stations) {
  /** Of the machine and the stations at it; what somebody else put back meanwhile stays so. */
  void end(LogbookEntry work) {
    Set<String> at =
        stations.settings().stream()
            .filter(each -> each.machine().equals(work.machine()))
            .map(StationSettings::name)
            .collect(Collectors.toSet());
    alerts.open().stream()
        .filter(each -> each.state() == AlertState.OUT_OF_SERVICE)
        .filter(each -> concerns(each.subject(), work.machine(), at))
        .forEach(each -> end(each, work));
  }

  private static boolean concerns(AlertSubject subject, String machine, Set<String> stations) {
    return switch (subject.type()) {
      case MACHINE -> subject.name().equals(machine);
      case STATION -> stations.contains(subject.name());
      case SERVICE, EDGE -> false;
    };
  }

  private void end(Alert alert, LogbookEntry work) {
    String word = "Log book: " + Words.of(work.work());
    try {
      var unused = alerts.add(AlertActions.putBackInService(alert, work.recorded(), word));
    } catch (Stale meanwhile) {
      return;
    }
  }
}
