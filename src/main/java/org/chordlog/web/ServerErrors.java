package org.chordlog.web;

import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/**
 * What the server itself refuses, before any route is asked, carries the headers of all answers.
 */
final class ServerErrors extends ErrorHandler {
  ServerErrors() {
    setShowStacks(false);
    setShowCauses(false);
    setShowOrigin(false);
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    WebServer.HEADERS.forEach((name, value) -> response.getHeaders().put(name, value));
    return super.handle(request, response, callback);
  }
}
