package org.chordlog.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import io.javalin.security.Roles;
import io.javalin.util.JavalinLogger;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.account.Right;
import org.chordlog.account.TryLater;
import org.chordlog.account.WrongSecret;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Capital;
import org.chordlog.store.DamagedRecordException;
import org.chordlog.store.StoreException;
import org.chordlog.web.http.Access;
import org.chordlog.web.http.Problems;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.RouteRight;
import org.chordlog.web.http.SnapshotTag;
import org.chordlog.web.http.WebSettings;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The web server: pages, routes and events. Close it before the store, stations and monitor. */
final class WebServer implements AutoCloseable {
  /** For connections and heads; requests have {@link RequestThreads}. */
  private static final int MOST_THREADS = 8;

  private static final int LEAST_THREADS = 4;

  private static final long STOP_MILLIS = 1_000;
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
          + " font-src 'self'; connect-src 'self'; manifest-src 'self'; base-uri 'none';"
          + " form-action 'self'; frame-ancestors 'none'";
  static final Map<String, String> HEADERS =
      Map.of(
          "Content-Security-Policy", POLICY,
          "X-Content-Type-Options", "nosniff",
          "Referrer-Policy", "no-referrer",
          "Cross-Origin-Opener-Policy", "same-origin",
          "Cross-Origin-Resource-Policy", "same-origin");

  private final WebSettings settings;
  private final WebPort port;
  private final Access access;
  private final Runnable endEvents;
  private final Javalin javalin;

  /** {@code endEvents} ends the event streams, before the server stops. */
  WebServer(
      WebPort port, Access access, List<PageRow> pages, List<Route> routes, Runnable endEvents) {
    this.settings = port.settings();
    this.port = port;
    this.access = access;
    this.endEvents = endEvents;
    this.javalin = Javalin.create(config -> configure(config, pages, routes));
  }

  /** A page, or a file of one, at a path; everybody who reaches the service may fetch it. */
  record PageRow(String path, Handler handler) {}

  private void configure(JavalinConfig config, List<PageRow> pages, List<Route> routes) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = settings.maxRequestBytes();
    config.http.generateEtags = true;
    config.http.prefer405over404 = true;
    config.jetty.addConnector(port::connector);
    config.jetty.threadPool = threads();
    config.jetty.modifyServer(server -> server.setStopTimeout(STOP_MILLIS));
    config.jetty.modifyServer(server -> server.setHandler(new RequestThreads()));
    config.jetty.modifyServer(server -> server.setErrorHandler(new ServerErrors()));
    config.jetty.modifyHttpConfiguration(port::http);
    config.routes.before(WebServer::addHeaders);
    String run = UUID.randomUUID().toString();
    config.routes.before(ctx -> SnapshotTag.inRun(ctx, run));
    config.routes.beforeMatched(access::check);
    Problems.register(config.routes);
    config.routes.exception(WrongSecret.class, WebServer::wrong);
    config.routes.exception(TryLater.class, WebServer::later);
    config.routes.exception(StoreException.class, WebServer::notStored);
    for (HandlerType method : List.of(HandlerType.GET, HandlerType.HEAD)) {
      pages.forEach(
          each ->
              config.routes.addEndpoint(
                  endpoint(method, each.path(), Right.ANYONE, each.handler())));
    }
    for (Route each : routes) {
      config.routes.addEndpoint(endpoint(each.method(), each.path(), each.right(), each.handler()));
      if (each.hasHead()) {
        config.routes.addEndpoint(
            endpoint(HandlerType.HEAD, each.path(), each.right(), each.handler()));
      }
    }
  }

  private static void wrong(WrongSecret e, Context ctx) {
    Problems.refusal(ctx, new Refusal(401, "Not let in", String.valueOf(e.getMessage())));
  }

  private static void later(TryLater e, Context ctx) {
    Problems.refusal(
        ctx,
        new Refusal(
            429,
            "Try again later",
            String.valueOf(e.getMessage()),
            Map.of("Retry-After", String.valueOf(e.seconds()))));
  }

  /** The disk is full, or the file is locked or damaged: nothing was done, later it may be. */
  private static void notStored(StoreException e, Context ctx) {
    LOG.atWarn()
        .addKeyValue("path", ctx.path())
        .setCause(e)
        .log("the store can't do what was asked");
    String detail = Capital.of(String.valueOf(e.getMessage())) + ".";
    Problems.refusal(
        ctx,
        e instanceof DamagedRecordException
            ? Refusal.damagedRecord(detail)
            : new Refusal(503, "Not possible now", detail));
  }

  private static Endpoint endpoint(HandlerType method, String path, Right right, Handler handler) {
    return Endpoint.create(method, path)
        .addMetadata(new Roles(Set.of(new RouteRight(right))))
        .handler(handler);
  }

  private static QueuedThreadPool threads() {
    QueuedThreadPool pool = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS);
    pool.setName("web");
    pool.setDaemon(true);
    return pool;
  }

  private static void addHeaders(Context ctx) {
    HEADERS.forEach(ctx::header);
    if (ctx.path().contains("/api/")) {
      ctx.header("Cache-Control", "no-cache");
    }
  }

  /** Binds and serves; refuses with the port when another program has it. */
  void start() {
    try {
      startQuietly();
      port.prove(javalin.jettyServer().server());
    } catch (RuntimeException e) {
      close();
      throw refused(e);
    }
  }

  /** The library logs why it could not start, which is said in better words. */
  private void startQuietly() {
    JavalinLogger.enabled = false;
    try {
      javalin.start();
    } finally {
      JavalinLogger.enabled = true;
    }
  }

  /** The library calls every failure to bind a port in use; the system's own words are below. */
  private RuntimeException refused(RuntimeException e) {
    String said = messages(e);
    if (said.contains("assign requested address")) {
      return new BadInput(
          "host", settings.host(), "is not an address of this computer", "one of its addresses");
    }
    if (said.contains("Permission denied")) {
      return new BadInput("port", settings.port(), "needs root", "1024 to 65535, or 0");
    }
    return said.contains("already in use")
        ? new BadInput(
            "port", settings.port(), "is in use on " + settings.host(), "a free port, or 0")
        : e;
  }

  private static String messages(Throwable e) {
    return Stream.<@Nullable Throwable>iterate(e, Objects::nonNull, Throwable::getCause)
        .map(each -> String.valueOf(each.getMessage()))
        .collect(Collectors.joining("\n"));
  }

  /** The port in use, also when 0 was given. */
  int port() {
    return javalin.port();
  }

  /** Ends the event clients, then the requests that still run, then the server. */
  @Override
  public void close() {
    endEvents.run();
    try {
      javalin.jettyServer().server().stop();
    } catch (Exception e) {
      LOG.atWarn().addKeyValue("cause", e).log("requests were cut off at the stop");
    }
  }
}
