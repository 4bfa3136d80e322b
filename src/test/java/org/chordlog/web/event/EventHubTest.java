package org.chordlog.web.event;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Set;
import org.chordlog.measure.Lengths;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class EventHubTest {
  private static final int PLACES = WebSettings.USUAL_EVENT_CLIENTS;

  @TempDir Path directory;

  @Test
  void aListenerThatCouldNotStartTakesNoPlace() throws Exception {
    try (Store store = Stores.open(directory)) {
      EventHub hub = hubWithoutStates(store);
      Wanted wanted = new Wanted(Set.of(), 100, Lengths.MM);
      Javalin app =
          Javalin.create(
                  config -> config.routes.get("/e", ctx -> hub.serve(ctx, wanted, EventId.NONE)))
              .start("127.0.0.1", 0);
      try {
        for (int i = 0; i <= PLACES; i++) {
          assertEquals(500, status(app.port()), "request " + i);
        }
        assertEquals(0, hub.clientCount());
      } finally {
        app.stop();
      }
    }
  }

  private static EventHub hubWithoutStates(Store store) {
    return new EventHub(
        WebSettings.onLoopback(0),
        Clock.systemUTC(),
        store,
        reading -> reading,
        () -> {
          throw new StoreException("too many readers at once", null);
        });
  }

  private static int status(int port) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + port + "/e");
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.discarding())
        .statusCode();
  }
}
