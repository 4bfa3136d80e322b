package org.chordlog.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/**
 * The routes of one workshop computer's records, once for all of them below a path with its name.
 * What reads is answered from its rooms; what changes something is refused, unless it is one of the
 * requests that the plant passes on.
 */
final class EdgeRoutes {
  static final String BELOW = "/edges/{edge}";
  private static final String EDGE = "edge";

  /** Of the computer that serves, not of the one whose records they are. */
  private static final String PORTS = "/api/ports";

  private final PlantRooms rooms;

  EdgeRoutes(PlantRooms rooms) {
    this.rooms = rooms;
  }

  /** {@code passedOn} take the places of rows of the same method and path. */
  List<Route> routes(List<Route> rows, List<Route> passedOn) {
    Set<String> taken = passedOn.stream().map(EdgeRoutes::key).collect(Collectors.toSet());
    return Stream.concat(
            passedOn.stream().map(each -> each.below(BELOW, each.handler())),
            rows.stream()
                .filter(each -> !taken.contains(key(each)))
                .filter(each -> !each.path().startsWith(PORTS))
                .map(this::below))
        .toList();
  }

  private static String key(Route row) {
    return row.method() + " " + row.path();
  }

  private Route below(Route row) {
    return row.changes()
        ? row.below(BELOW, this::refuse)
        : row.below(BELOW, ctx -> rooms.of(name(ctx)).answer(row, ctx));
  }

  /** The name of the workshop computer that a request is about. */
  static String name(Context ctx) {
    return ctx.pathParam(EDGE);
  }

  private void refuse(Context ctx) {
    String name = rooms.edge(name(ctx)).name();
    throw new Refusal(
        403,
        "Changed at the machine only",
        "These are the records of "
            + name
            + "; they are changed there, on the pages of that computer. From here alerts can be"
            + " acknowledged, assigned and put aside, and work written into a log book.");
  }
}
