package org.chordlog.web;

import java.util.Map;
import java.util.WeakHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.eclipse.jetty.util.thread.Scheduler;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Closes connections whose client takes more than {@value #MOST_SECONDS} s to send one request,
 * head and body: the server's own limit is for silence only, and a byte now and then passes it.
 * Looked at once a second by the server's scheduler; {@code watched} belongs to that thread.
 */
final class SlowClients extends AbstractLifeCycle {
  private static final int MOST_SECONDS = 12;
  private static final long MOST_NANOS = TimeUnit.SECONDS.toNanos(MOST_SECONDS);
  private static final Logger LOG = LoggerFactory.getLogger(SlowClients.class);

  /** What had come and gone at the last look, and since when a request has been coming. */
  private record Watch(long bytesIn, long answers, long sinceNanos) {}

  private final ServerConnector connector;
  private final LongSupplier nanos;
  private final Map<Connection, Watch> watched = new WeakHashMap<>();
  private Scheduler.Task next = () -> true;

  SlowClients(ServerConnector connector) {
    this.connector = connector;
    this.nanos = System::nanoTime;
  }

  @Override
  protected void doStart() {
    next = connector.getScheduler().schedule(this::look, 1, TimeUnit.SECONDS);
  }

  @Override
  protected void doStop() {
    boolean unused = next.cancel();
  }

  private void look() {
    try {
      connector.getConnectedEndPoints().forEach(this::look);
    } catch (RuntimeException e) {
      LOG.atWarn().setCause(e).log("slow clients were not looked for");
    } finally {
      if (isRunning()) {
        next = connector.getScheduler().schedule(this::look, 1, TimeUnit.SECONDS);
      }
    }
  }

  private void look(EndPoint client) {
    Connection connection = client.getConnection();
    if (connection == null) {
      return;
    }
    long now = nanos.getAsLong();
    Watch before = watched.getOrDefault(connection, new Watch(0, 0, now));
    long bytes = connection.getBytesIn();
    long answers = connection.getMessagesOut();
    boolean comes = bytes > before.bytesIn() && answers == before.answers();
    if (comes && now - before.sinceNanos() > MOST_NANOS) {
      LOG.atInfo().addKeyValue("address", client.getRemoteSocketAddress()).log("too slow: closed");
      client.close();
      return;
    }
    // a request that came whole sends nothing more: its clock begins anew with the next byte
    boolean quiet = bytes == before.bytesIn() && connection.getMessagesIn() > answers;
    boolean anew = quiet || answers != before.answers();
    watched.put(connection, new Watch(bytes, answers, anew ? now : before.sinceNanos()));
  }
}
