package org.chordlog.web;

import java.util.concurrent.Executors;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.web.service.ServiceRoutes;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Runs requests on threads of their own. The server's threads are left with what never waits:
 * taking connections, reading heads, and answering whether the service lives, which therefore is
 * answered whatever all requests together are stuck in.
 */
final class RequestThreads extends Handler.Wrapper {
  /** Threads that run requests; of them {@code request-1} is the first. */
  static final int MOST = 16;

  static final String NAME = "request-";
  private static final long IDLE_SECONDS = 60;
  private static final long STOP_MILLIS = 500;
  private final AtomicInteger started = new AtomicInteger();
  private final ThreadPoolExecutor pool;
  private final AddressShares shares;

  RequestThreads() {
    pool = (ThreadPoolExecutor) Executors.newFixedThreadPool(MOST, this::thread);
    pool.setKeepAliveTime(IDLE_SECONDS, TimeUnit.SECONDS);
    pool.allowCoreThreadTimeOut(true);
    shares = new AddressShares(pool, MOST);
  }

  private Thread thread(Runnable work) {
    Thread thread = new Thread(work, NAME + started.incrementAndGet());
    thread.setDaemon(true);
    return thread;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    if (asksWhetherItLives(request)) {
      return super.handle(request, response, callback);
    }
    shares.execute(Request.getRemoteAddr(request), () -> run(request, response, callback));
    return true;
  }

  /** Of no other method, whose body might be read. */
  private static boolean asksWhetherItLives(Request request) {
    return Request.getPathInContext(request).equals(ServiceRoutes.LIVE)
        && (HttpMethod.GET.is(request.getMethod()) || HttpMethod.HEAD.is(request.getMethod()));
  }

  private void run(Request request, Response response, Callback callback) {
    try {
      if (!super.handle(request, response, callback)) {
        Response.writeError(request, response, callback, 404);
      }
    } catch (Exception | LinkageError e) {
      Response.writeError(request, response, callback, e);
    }
  }

  /** Connections are closed by now, so that whoever reads or writes one ends. */
  @Override
  protected void doStop() throws Exception {
    super.doStop();
    pool.shutdown();
    if (!pool.awaitTermination(STOP_MILLIS, TimeUnit.MILLISECONDS)) {
      pool.shutdownNow();
    }
  }
}
