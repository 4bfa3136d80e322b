package org.chordlog.web.http;

import io.javalin.security.RouteRole;

/** What a route lets its caller do; a route without one is refused. */
public enum Right implements RouteRole {
  /** Open to whoever reaches the service. */
  LOOK,
  /** Changes something: same origin, a named person, and a token when bound beyond loopback. */
  ACT
}
