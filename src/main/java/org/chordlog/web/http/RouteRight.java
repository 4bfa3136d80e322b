package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.security.RouteRole;
import java.util.Optional;
import org.chordlog.account.Right;

/** What a route needs, attached to it; a request to a route without one is refused. */
public record RouteRight(Right right) implements RouteRole {
  static Optional<Right> of(Context ctx) {
    return ctx.routeRoles().stream()
        .filter(RouteRight.class::isInstance)
        .map(each -> ((RouteRight) each).right())
        .findFirst();
  }
}
