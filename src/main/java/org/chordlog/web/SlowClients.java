package org.chordlog.web;

import java.util.Map;
import java.util.WeakHashMap;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.chordlog.timer.TimedWork;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.io.ssl.SslConnection;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Closes connections whose client takes more than {@value #MOST_SECONDS} s to send one request,
 * head and body, or to shake hands for TLS: the server's own limit is for silence only, and a byte
 * now and then passes it. Looked at once a second by the server's scheduler; {@code watched}
 * belongs to that thread.
 */
final class SlowClients extends AbstractLifeCycle {
  private static final int MOST_SECONDS = 12;
  private static final long MOST_NANOS = TimeUnit.SECONDS.toNanos(MOST_SECONDS);
  private static final Logger LOG = LoggerFactory.getLogger(SlowClients.class);

  /** Of a TLS session that is not there yet. */
  private static final String NO_PROTOCOL = "NONE";

  /**
   * What had been received and sent when last looked at, how much had been received when the last
   * answer was complete, and since when a request has been coming.
   */
  private record Watch(long bytesIn, long answers, long idleBytes, long sinceNanos) {}

  private final ServerConnector connector;
  private final LongSupplier nanos;
  private final Map<EndPoint, Watch> watched = new WeakHashMap<>();
  private Scheduler.Task next = () -> true;

  SlowClients(ServerConnector connector) {
    this.connector = connector;
    this.nanos = System::nanoTime;
  }

  @Override
  protected void doStart() {
    next = connector.getScheduler().schedule(TimedWork.of(this::look), 1, TimeUnit.SECONDS);
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
        next = connector.getScheduler().schedule(TimedWork.of(this::look), 1, TimeUnit.SECONDS);
      }
    }
  }

  private void look(EndPoint client) {
    Connection outer = client.getConnection();
    if (outer != null) {
      Connection inner = inside(outer);
      look(client, inner, inner == null ? outer.getBytesIn() : inner.getBytesIn());
    }
  }

  /** What requests come by; null while the hands of TLS are being shaken. */
  private static @Nullable Connection inside(Connection outer) {
    if (!(outer instanceof SslConnection tls)) {
      return outer;
    }
    boolean shaken = !tls.getSSLEngine().getSession().getProtocol().equals(NO_PROTOCOL);
    return shaken ? tls.getSslEndPoint().getConnection() : null;
  }

  private void look(EndPoint client, @Nullable Connection inner, long bytes) {
    long now = nanos.getAsLong();
    Watch before = watched.getOrDefault(client, new Watch(0, 0, 0, now));
    long answers = inner == null ? 0 : inner.getMessagesOut();
    boolean comes = bytes > before.bytesIn() && answers == before.answers();
    boolean idle = before.bytesIn() == before.idleBytes();
    if (comes && !idle && now - before.sinceNanos() > MOST_NANOS) {
      LOG.atInfo().addKeyValue("address", client.getRemoteSocketAddress()).log("too slow: closed");
      client.close();
      return;
    }
    // a request that came whole sends nothing more: its clock begins anew with the next byte
    boolean quiet = bytes == before.bytesIn() && inner != null && inner.getMessagesIn() > answers;
    boolean done = answers != before.answers() || bytes < before.bytesIn();
    long idleBytes = done ? bytes : before.idleBytes();
    boolean anew = quiet || done || idle;
    watched.put(client, new Watch(bytes, answers, idleBytes, anew ? now : before.sinceNanos()));
  }
}
