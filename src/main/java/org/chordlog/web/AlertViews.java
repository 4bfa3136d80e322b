package org.chordlog.web;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.alert.Alert;
import org.chordlog.store.Alerts;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Untold;
import org.chordlog.web.AlertView.UntoldView;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Times;

/** Makes alerts into what people see of them, with what happened and who could not be told. */
record AlertViews(Alerts alerts, Outbox outbox, Clock clock) {
  private static final int MOST_UNTOLD = 500;

  AlertView of(Call call, Alert alert) {
    return all(call, List.of(alert)).get(0);
  }

  /** In the same order. */
  List<AlertView> all(Call call, List<Alert> of) {
    List<Untold> untold = outbox.untold(MOST_UNTOLD);
    return of.stream()
        .map(
            each ->
                AlertView.of(
                    call, each, alerts.events(each.id()), about(each, untold), nowMicros()))
        .toList();
  }

  /** Each recipient once, by the newest delivery. */
  private static List<UntoldView> about(Alert alert, List<Untold> untold) {
    Map<String, UntoldView> byName = new LinkedHashMap<>();
    untold.stream()
        .filter(each -> each.alertId() == alert.id())
        .map(each -> UntoldView.of(each.delivery()))
        .forEach(each -> byName.putIfAbsent(each.to(), each));
    Collection<UntoldView> all = byName.values();
    return List.copyOf(all);
  }

  long nowMicros() {
    return Times.micros(Instant.now(clock));
  }
}
