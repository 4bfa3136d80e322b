package org.chordlog.web.event;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.chordlog.measure.Lengths;
import org.chordlog.web.http.Json;

/** One server-sent event; its text in a unit is made once, by the first client that sends it. */
public final class ServerEvent {
  private final String name;
  private final EventId id;
  private final String station;
  private final Supplier<Object> data;
  private final Map<Lengths, String> texts = new ConcurrentHashMap<>(2);

  private ServerEvent(String name, EventId id, String station, Supplier<Object> data) {
    this.name = name;
    this.id = id;
    this.station = station;
    this.data = data;
  }

  /**
   * {@code data} is asked for once a unit, when the first client takes it; {@code station} is empty
   * where it concerns none.
   */
  public static ServerEvent of(String name, String station, Supplier<Object> data) {
    return new ServerEvent(name, EventId.NONE, station, data);
  }

  /** A reading: from its event id a client resumes. */
  static ServerEvent reading(EventId id, String station, Object view) {
    return new ServerEvent("reading", id, station, () -> view);
  }

  /** Of the reading; 0 for anything else. */
  long id() {
    return id.reading();
  }

  /** Empty where it concerns no station. */
  String station() {
    return station;
  }

  String key() {
    return name + ' ' + station;
  }

  /** After the WHATWG HTML standard, section 9.2 (server-sent events). */
  String text(Lengths lengths) {
    return texts.computeIfAbsent(lengths, this::made);
  }

  private String made(Lengths lengths) {
    String json = Json.text(data.get(), lengths);
    return (id() > 0 ? "id: " + id.text() + "\n" : "")
        + "event: "
        + name
        + "\ndata: "
        + json
        + "\n\n";
  }
}
