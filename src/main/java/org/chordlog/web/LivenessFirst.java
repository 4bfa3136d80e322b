package org.chordlog.web;

import org.chordlog.web.service.ServiceRoutes;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ThreadLimitHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Leaves threads to the question whether the service lives, however many addresses keep the others
 * busy: all other requests together have only so many, and those that wait hold none. Any thread.
 */
final class LivenessFirst extends ThreadLimitHandler {
  /** Threads that take connections, read heads, and answer that question. */
  private static final int KEPT_FREE = 8;

  private final int most;

  /** {@code threads}: of the server. */
  LivenessFirst(int threads) {
    most = threads - KEPT_FREE;
  }

  @Override
  public boolean onConditionsMet(Request request, Response response, Callback callback)
      throws Exception {
    return Request.getPathInContext(request).equals(ServiceRoutes.LIVE)
        ? nextHandler(request, response, callback)
        : super.onConditionsMet(request, response, callback);
  }

  /** All addresses as one. */
  @Override
  protected String getRemoteIP(Request request) {
    return "all";
  }

  @Override
  protected int getThreadLimit(String all) {
    return most;
  }
}
