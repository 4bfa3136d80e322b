package org.chordlog.measure.alert;

import org.chordlog.measure.BadInput;

/** What is wrong with what; at most one alert of a key is open. */
public record AlertKey(AlertKind kind, AlertSubject subject) {
  public AlertKey {
    if (kind.about() != subject.type()) {
      throw new BadInput(
          "subject", subject, "is not what " + kind + " is about", "a " + kind.about());
    }
  }

  public static AlertKey machine(AlertKind kind, String machine) {
    return new AlertKey(kind, AlertSubject.machine(machine));
  }

  public static AlertKey station(AlertKind kind, String station) {
    return new AlertKey(kind, AlertSubject.station(station));
  }

  public static AlertKey edge(AlertKind kind, String edge) {
    return new AlertKey(kind, AlertSubject.edge(edge));
  }

  public static AlertKey service(AlertKind kind) {
    return new AlertKey(kind, AlertSubject.SERVICE);
  }
}
