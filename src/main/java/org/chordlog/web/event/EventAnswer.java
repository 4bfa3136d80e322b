package org.chordlog.web.event;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;

/** The answer to a request for events: its headers, and what is written to. */
final class EventAnswer {
  private EventAnswer() {}

  static OutputStream output(Context ctx) {
    try {
      return ctx.res().getOutputStream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Nothing on the way may keep events back to send several at once. */
  static void start(Context ctx) {
    ctx.res().setContentType("text/event-stream");
    ctx.res().setCharacterEncoding("UTF-8");
    ctx.res().setHeader("Cache-Control", "no-store");
    ctx.res().setHeader("X-Accel-Buffering", "no");
  }
}
