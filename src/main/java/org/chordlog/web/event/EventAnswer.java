package org.chordlog.web.event;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;

/** The answer to a request for events: its headers, what is written to, and its connection. */
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

  /** The connection, which can be cut where its client no longer reads. */
  static EndPoint endPoint(Context ctx) {
    return ServletContextRequest.getServletContextRequest(ctx.req())
        .getConnectionMetaData()
        .getConnection()
        .getEndPoint();
  }
}
