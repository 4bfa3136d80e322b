package org.chordlog.web.http;

import io.javalin.security.RouteRole;

/** What a route lets its caller do; a request to a route without one is refused. */
public enum Right implements RouteRole {
  /** Reads; open to everyone who can reach the service. */
  READ,
  /** Changes something: same origin, a named person, and a token when bound beyond loopback. */
  CHANGE
}
