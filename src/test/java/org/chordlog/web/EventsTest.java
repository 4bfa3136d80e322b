package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(value = 600, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Tag("slow")
final class EventsTest {
  @TempDir Path directory;

  @Test
  void aReadingTakenComesWithItsIdAfterHelloAndState() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      try (EventStream events = EventStream.open(served, "/api/events")) {
        assertEquals("hello", events.next().name());
        assertEquals("A", events.next("state").data().get("station").asText());
        served.indicator.show(2.733);
        EventStream.Event reading = events.next("reading");
        assertEquals(reading.data().get("id").asLong(), reading.id());
        assertEquals(2.733, reading.data().get("depthMm").asDouble(), 0.001);
        assertEquals(job.id(), events.next("statistics").data().get("jobId").asLong());
      }
    }
  }

  @Test
  void resumesAfterTheLastEventIdWithoutHoleOrDouble() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 40);
      try (EventStream events = EventStream.open(served, "/api/events", "Last-Event-ID", "7")) {
        assertFalse(events.next("hello").data().get("reload").asBoolean());
        served.readings(job, 20);
        List<Long> ids = new ArrayList<>();
        while (ids.size() < 53) {
          ids.add(events.next("reading").id());
        }
        assertEquals(LongStream.rangeClosed(8, 60).boxed().toList(), ids);
      }
    }
  }

  @Test
  void tooFarBehindIsToldToReload() throws Exception {
    try (Served served = new Served(directory)) {
      served.readings(served.job(), 1_100);
      Await.until(() -> hello(served, "1099").equals("false"));
      assertEquals("true", hello(served, "1"));
      assertEquals("true", hello(served, "5000"));
    }
  }

  /** The ids that a page knows may mean other readings then. */
  @Test
  void afterARestoreEveryPageIsToldToReload() throws Exception {
    Path data = Files.createDirectory(directory.resolve("data"));
    Path backup = directory.resolve("copy.db");
    String epoch;
    try (Served served = new Served(data)) {
      Job job = served.job();
      served.readings(job, 10);
      Stores.files(data).backup(backup);
      served.readings(job, 40);
      try (EventStream events = EventStream.open(served, "/api/events")) {
        epoch = events.next("hello").data().get("epoch").asText();
      }
      assertEquals("false", hello(served, "50-" + epoch));
    }
    try (Served served = new Served(data)) {
      assertEquals("false", hello(served, "50-" + epoch), "a start alone begins no epoch");
    }
    assertTrue(Stores.files(data).restore(backup).verified());
    try (Served served = new Served(data)) {
      served.readings(served.store.jobs().find(1).orElseThrow(), 60);
      assertEquals("true", hello(served, "50-" + epoch));
      assertEquals(400, served.get("/api/events?lastEventId=x").statusCode());
    }
  }

  private static String hello(Served served, String last) throws Exception {
    try (EventStream events = EventStream.open(served, "/api/events", "Last-Event-ID", last)) {
      return events.next("hello").data().get("reload").asText();
    }
  }

  @Test
  void aClientThatNeverReadsDelaysNobodyAndTheStopNeither() throws Exception {
    Served served = new Served(directory);
    try (Socket stuck = new Socket(InetAddress.getLoopbackAddress(), served.web.port());
        EventStream events = EventStream.open(served, "/api/events")) {
      stuck.setReceiveBufferSize(1_024);
      String request = "GET /api/events?lastEventId=1 HTTP/1.1\r\nHost: localhost\r\n\r\n";
      Job job = served.job();
      served.readings(job, 900);
      stuck.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      for (int i = 0; i < 20; i++) {
        served.readings(job, 900);
      }
      long last = 0;
      while (last < 18_900) {
        long id = events.next("reading").id();
        assertEquals(last + 1, id);
        last = id;
      }
    } finally {
      served.close();
    }
    Await.until(() -> threads("event-sender").isEmpty());
  }

  private static List<String> threads(String name) {
    return Thread.getAllStackTraces().keySet().stream()
        .map(Thread::getName)
        .filter(name::equals)
        .toList();
  }

  @Test
  void moreClientsThanAllowedAreRefused() throws Exception {
    WebSettings few = new WebSettings("127.0.0.1", 0, "", 2, 2, 65_536);
    try (Served served = new Served(directory, few);
        EventStream first = EventStream.open(served, "/api/events")) {
      assertEquals("hello", first.next().name());
      refuseTheThird(served);
      Await.until(() -> served.json("/health").get("eventClients").asInt() == 1);
    }
  }

  private static void refuseTheThird(Served served) throws Exception {
    try (EventStream second = EventStream.open(served, "/api/events")) {
      assertEquals("hello", second.next().name());
      var refused = served.get("/api/events");
      assertEquals(429, refused.statusCode());
      assertEquals("10", refused.headers().firstValue("Retry-After").orElseThrow());
    }
  }

  @Test
  void theStopEndsEveryStream() throws Exception {
    Served served = new Served(directory);
    EventStream events = EventStream.open(served, "/api/events");
    assertEquals("hello", events.next().name());
    served.close();
    assertThrows(
        IOException.class,
        () -> {
          while (true) {
            events.next();
          }
        });
  }
}
