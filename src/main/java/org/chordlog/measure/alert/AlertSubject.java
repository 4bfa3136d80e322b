package org.chordlog.measure.alert;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** What an alert is about; the service has no name. */
public record AlertSubject(Type type, String name) {
  public static final AlertSubject SERVICE = new AlertSubject(Type.SERVICE, "");

  /** Names are stored. */
  public enum Type {
    MACHINE,
    STATION,
    SERVICE,
    /** A workshop computer, where its plant watches. */
    EDGE
  }

  public AlertSubject {
    if (type != Type.SERVICE) {
      Check.text("subject", name);
    } else if (!name.isEmpty()) {
      throw new BadInput("subject", name, "is the name of a service", "none: there is one service");
    }
  }

  public static AlertSubject machine(String name) {
    return new AlertSubject(Type.MACHINE, name);
  }

  public static AlertSubject edge(String name) {
    return new AlertSubject(Type.EDGE, name);
  }

  public static AlertSubject station(String name) {
    return new AlertSubject(Type.STATION, name);
  }
}
