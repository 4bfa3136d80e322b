package org.chordlog.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.store.Plant;
import org.chordlog.web.http.Refusal;

/**
 * Pages of a plant: its own, and below the name of each workshop computer those that show its
 * records. Pages that only serve to measure or to change something are not there. Each says in its
 * head whose it is, which {@code place.js} reads.
 */
final class PlantPages {
  /** Files in {@code dashboards/plant}. */
  private static final Set<String> OWN = Set.of("index", "jobs");

  /** Shared with the service at the machines. */
  private static final Set<String> COMMON = Set.of("sign-in", "accounts", "alerts");

  private static final Set<String> OF_EDGE =
      Set.of(
          "job",
          "jobs",
          "job-changes",
          "line",
          "machine",
          "machines",
          "studies",
          "study",
          "alerts",
          "sign-in");

  private final PlantRooms rooms;

  PlantPages(PlantRooms rooms) {
    this.rooms = rooms;
  }

  List<WebServer.PageRow> rows() {
    String edge = EdgeRoutes.BELOW;
    return Stream.of(own(), ofEdges(edge), KeptFiles.rows(""), KeptFiles.rows(edge))
        .flatMap(List::stream)
        .toList();
  }

  private static List<WebServer.PageRow> own() {
    return List.of(
        new WebServer.PageRow("/", PlantPages::own),
        new WebServer.PageRow("/{page}.html", PlantPages::own),
        new WebServer.PageRow("/help", HelpPages::first),
        new WebServer.PageRow("/help/{page}", ctx -> send(ctx, ofPlant(help(ctx)))));
  }

  private List<WebServer.PageRow> ofEdges(String edge) {
    return List.of(
        new WebServer.PageRow(edge, this::front),
        new WebServer.PageRow(edge + "/{page}.html", this::ofEdge),
        new WebServer.PageRow(edge + "/help", HelpPages::first),
        new WebServer.PageRow(edge + "/help/{page}", ctx -> send(ctx, at(edge(ctx), help(ctx)))));
  }

  private static String help(Context ctx) {
    return HelpPages.page(ctx.pathParam("page"));
  }

  private static void own(Context ctx) {
    String name = ctx.pathParamMap().getOrDefault("page", "index");
    if (!OWN.contains(name) && !COMMON.contains(name)) {
      throw Refusal.notFound("page", name);
    }
    send(ctx, ofPlant(OWN.contains(name) ? Pages.ofPlant(name) : Pages.page(name)));
  }

  /** Links of the front page are relative to a folder. */
  private void front(Context ctx) {
    Plant.Edge edge = edge(ctx);
    if (ctx.path().endsWith("/")) {
      send(ctx, at(edge, Pages.ofPlant("workshop")));
    } else {
      ctx.redirect(ctx.path().substring(ctx.path().lastIndexOf('/') + 1) + "/");
    }
  }

  private void ofEdge(Context ctx) {
    Plant.Edge edge = edge(ctx);
    String name = ctx.pathParam("page");
    if (!OF_EDGE.contains(name)) {
      throw Refusal.notFound("page", name);
    }
    send(ctx, at(edge, Pages.page(name)));
  }

  private Plant.Edge edge(Context ctx) {
    return rooms.edge(EdgeRoutes.name(ctx));
  }

  private static String ofPlant(String page) {
    return told(page, "plant", "");
  }

  private static String at(Plant.Edge edge, String page) {
    return told(told(page, "workshop", edge.name()), "site", edge.site());
  }

  private static String told(String page, String name, String content) {
    String meta = "  <meta name=\"%s\" content=\"%s\">\n".formatted(name, quoted(content));
    int end = page.indexOf("</head>");
    return page.substring(0, end) + meta + page.substring(end);
  }

  private static String quoted(String text) {
    return text.replace("&", "&amp;").replace("\"", "&quot;").replace("<", "&lt;");
  }

  private static void send(Context ctx, String page) {
    ctx.header("Cache-Control", "no-cache").html(page);
  }
}
