package org.chordlog.web.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.net.StandardSocketOptions;
import java.nio.channels.SocketChannel;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The connection that a request came by, to end it where its answer can't end well. */
public final class Connections {
  private static final Logger LOG = LoggerFactory.getLogger(Connections.class);

  private Connections() {}

  /** May be closed from any thread; what was not yet sent is lost then. */
  public static EndPoint of(Context ctx) {
    return ServletContextRequest.getServletContextRequest(ctx.req())
        .getConnectionMetaData()
        .getConnection()
        .getEndPoint();
  }

  /**
   * Ends it as a fault, not as the end of an answer: who asks for the connection to be closed, as
   * many proxies do, is told the end of an answer by that alone.
   */
  static void cut(Context ctx) {
    EndPoint end = of(ctx);
    if (transport(end) instanceof SocketChannel socket) {
      reset(socket);
    }
    end.close();
  }

  /** That of an encrypted connection is the connection below it. */
  private static Object transport(EndPoint end) {
    return end.getTransport() instanceof EndPoint below ? transport(below) : end.getTransport();
  }

  private static void reset(SocketChannel socket) {
    try {
      socket.setOption(StandardSocketOptions.SO_LINGER, 0);
      socket.close();
    } catch (IOException e) {
      LOG.atDebug().setCause(e).log("the connection is closed already");
    }
  }
}
