package org.chordlog.web;

import org.chordlog.monitor.Slice;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;

/** Which part of a job is asked for. */
final class Slices {
  private Slices() {}

  static Slice of(Call call) {
    return new Slice(
        call.query("above", 0, 0, Long.MAX_VALUE),
        call.query("upTo", Long.MAX_VALUE, 0, Long.MAX_VALUE),
        call.micros("from"),
        call.lastMicros("to"),
        call.text("lot").orElse(null));
  }

  /** The parameters that bound it; its statistics rest on its readings alone. */
  static Route.Draft asked(Route.Draft draft) {
    return draft
        .query("above", "integer", "only readings with an id above it, as after an event")
        .query("upTo", "integer", "only readings with an id up to it")
        .query("from", "string", Times.FROM)
        .query("to", "string", Times.TO)
        .query("lot", "string", "only readings of that material lot; empty: of none named");
  }
}
