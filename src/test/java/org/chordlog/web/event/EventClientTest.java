package org.chordlog.web.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.measure.Lengths;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one listener holds while it does not read. */
final class EventClientTest {
  private static final int HOUR_MILLIS = 3_600_000;

  @TempDir Path directory;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  @Test
  void ofNoticesTheNewest64AreHeldAndTheRestCounted() throws Exception {
    EventClient client = client(50);
    for (int i = 1; i <= 100; i++) {
      client.notice(event("refused", "A", i));
    }
    String sent = sent(client, "\"n\":100");
    assertEquals(36, client.droppedNotices());
    assertFalse(sent.contains("\"n\":36}"), sent);
    assertTrue(sent.contains("\"n\":37}"), sent);
  }

  @Test
  void ofValuesTheNewestOfEachStationIsHeld() throws Exception {
    EventClient client = client(50);
    for (int i = 1; i <= 1_000; i++) {
      client.replace(event("live", "A", i));
      client.replace(event("live", "B", -i));
    }
    String sent = sent(client, "\"n\":-1000");
    assertEquals(2, sent.split("event: live", -1).length - 1, sent);
    assertTrue(sent.contains("\"n\":1000}"), sent);
  }

  /** A station's values are held back by its own last one, not by another station's. */
  @Test
  void stationsDoNotHoldEachOtherUp() throws Exception {
    EventClient client = client(HOUR_MILLIS);
    Thread sender = start(client);
    client.replace(event("live", "A", 1));
    Await.until(() -> text().contains("\"n\":1}"));
    client.replace(event("live", "A", 2));
    client.replace(event("live", "B", 3));
    Await.until(() -> text().contains("\"n\":3}"));
    assertFalse(text().contains("\"n\":2}"), text());
    client.close();
    sender.join();
  }

  private EventClient client(int liveMillis) {
    return new EventClient(out, "here", "", new Wanted(Set.of(), liveMillis, Lengths.MM), 0);
  }

  private static ServerEvent event(String name, String station, int number) {
    return ServerEvent.of(name, station, () -> Map.of("n", number));
  }

  private String sent(EventClient client, String last) throws Exception {
    Thread sender = start(client);
    Await.until(() -> text().contains(last));
    client.close();
    sender.join();
    return text();
  }

  private String text() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private Thread start(EventClient client) {
    Store store = Stores.open(directory);
    ReadingFeed feed = new ReadingFeed(store.readings(), reading -> reading, store.epoch());
    Thread sender =
        new Thread(
            () -> {
              try (store) {
                ServerEvent hello = event("hello", "", 0);
                client.sendAll(feed, hello, () -> hello, EventHub.HEARTBEAT_MILLIS);
              } catch (Exception e) {
                throw new IllegalStateException(e);
              }
            });
    sender.start();
    return sender;
  }
}
