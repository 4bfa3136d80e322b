package org.chordlog.web.http;

import io.javalin.http.Handler;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Limits how many expensive requests of one kind run at once. A few more wait their turn; others
 * are refused at once and told when to ask again, so that one caller leaves threads and memory to
 * the rest.
 */
public final class RequestLimiter {
  private static final int PATIENCE_SECONDS = 10;

  private final String what;
  private final int most;
  private final Semaphore places;
  private final Semaphore turns;
  private final int retrySeconds;

  RequestLimiter(String what, int atOnce, int waiting, int retrySeconds) {
    this.what = what;
    this.most = atOnce + waiting;
    this.places = new Semaphore(most);
    this.turns = new Semaphore(atOnce, true);
    this.retrySeconds = retrySeconds;
  }

  /** Reports and tables of whole jobs: each holds readings in memory, or waits for its client. */
  public static RequestLimiter ofFiles() {
    return new RequestLimiter("reports and tables", 2, 2, 5);
  }

  /** Charts and statistics: more than the cores there are gains nothing. */
  public static RequestLimiter ofFigures() {
    return new RequestLimiter("charts and statistics", 6, 10, 1);
  }

  /** Sign-ins that wait for a provider elsewhere, which may be slow or away. */
  public static RequestLimiter ofProvider() {
    return new RequestLimiter("sign-ins", 2, 4, 5);
  }

  /** Ports that are listened to before a station is set up, on this computer or elsewhere. */
  public static RequestLimiter ofPorts() {
    return new RequestLimiter("tries of ports", 4, 2, 5);
  }

  /** The routes within this room. */
  public List<Route> around(List<Route> routes) {
    return routes.stream().map(route -> route.with(around(route.handler()))).toList();
  }

  /**
   * The handler, refused with 503 and Retry-After where all places are taken or no turn comes in
   * time. Any thread.
   */
  public Handler around(Handler handler) {
    return ctx -> {
      if (!places.tryAcquire()) {
        throw full();
      }
      try {
        inTurn(() -> handler.handle(ctx));
      } finally {
        places.release();
      }
    };
  }

  /** What is done in it. */
  private interface Work {
    void run() throws Exception;
  }

  private void inTurn(Work work) throws Exception {
    if (!turns.tryAcquire(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      throw full();
    }
    try {
      work.run();
    } finally {
      turns.release();
    }
  }

  /** Places that are taken, those that wait included. */
  int taken() {
    return most - places.availablePermits();
  }

  private Refusal full() {
    return new Refusal(
        503,
        "Too much asked for at once",
        "As many " + what + " are being made as this service makes at once. Ask again in a moment.",
        Map.of("Retry-After", String.valueOf(retrySeconds)));
  }
}
