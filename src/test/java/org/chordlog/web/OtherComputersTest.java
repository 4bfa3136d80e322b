package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.link.LinkException;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A page reaches few other computers: enough to set a station up, too little to look around. */
final class OtherComputersTest {
  @TempDir Path directory;
  private final AtomicLong nanos = new AtomicLong(5);
  private final OtherComputers others = new OtherComputers(List::of, nanos::get);

  private void ask(int port) {
    others.ask("port", new TcpSettings("127.0.0.1", port), "somebody");
  }

  @Test
  void anHourHasRoomForSoManyDifferentOnesAndSaysWhenAgain() {
    for (int port = 1; port <= OtherComputers.MOST; port++) {
      ask(port);
      nanos.addAndGet(TimeUnit.MINUTES.toNanos(1));
    }
    Refusal refused = assertThrows(Refusal.class, () -> ask(999));
    assertTrue(refused.toString().contains("in 41 min"), refused::toString);
    ask(7);
    nanos.addAndGet(TimeUnit.MINUTES.toNanos(40));
    ask(999);
    assertThrows(Refusal.class, () -> ask(1000));
  }

  @Test
  void oneComputerUnderManyNamesIsOne() {
    for (String name : List.of("localhost", "LOCALHOST", "127.0.0.1", "[::ffff:127.0.0.1]")) {
      others.ask("port", new TcpSettings(name, 9), "somebody");
    }
    for (int port = 1; port < OtherComputers.MOST; port++) {
      ask(port == 9 ? 900 : port);
    }
    assertThrows(Refusal.class, () -> ask(1000));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "169.254.169.254",
        "[fe80::1]",
        "224.0.0.1",
        "[ff02::1]",
        "255.255.255.255",
        "0.0.0.0",
        "[::]",
        "0.1.2.3",
        "[::ffff:169.254.1.1]"
      })
  void addressesAtWhichNoDeviceIsAreRefusedByWords(String host) {
    TcpSettings link = new TcpSettings(host, 80);
    BadInput refused = assertThrows(BadInput.class, () -> others.ask("link.host", link, "x"));
    assertEquals("link.host", refused.faults().get(0).field());
    assertThrows(LinkException.class, link::open);
  }

  @Test
  void pagesAreRefusedBeyondThatAndEachIsLogged() throws Exception {
    try (Served served = new Served(directory);
        LoggedLines log = new LoggedLines();
        ServerSocket device = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
      String open = "127.0.0.1:" + device.getLocalPort();
      assertEquals(201, served.post("/api/stations", station(device.getLocalPort())).statusCode());
      for (int port = 1; port < OtherComputers.MOST; port++) {
        assertEquals(400, hear(served, "127.0.0.1:" + port).statusCode());
      }
      HttpResponse<String> refused = hear(served, "127.0.0.1:999");
      assertEquals(429, refused.statusCode(), refused.body());
      long wait = refused.headers().firstValueAsLong("Retry-After").orElse(0);
      assertTrue(wait > 3500 && wait <= 3600, wait + " s");
      assertEquals(429, served.post("/api/stations", station(999)).statusCode());
      assertEquals(1 + 1, served.stations.settings().size());
      assertEquals(200, hear(served, open).statusCode());
      assertFalse(log.with(Level.INFO, "by=\"Jörg\", target=\"127.0.0.1:7\"").isEmpty(), log.all());
      assertEquals(2, log.with(Level.WARN, "target=\"127.0.0.1:999\"").size(), log.all());
    }
  }

  private static HttpResponse<String> hear(Served served, String port) throws Exception {
    return served.post("/api/ports/hear", "{\"port\": \"" + port + "\", \"seconds\": 0.2}");
  }

  private static String station(int port) {
    return """
        {"station": {"name": "B", "machine": "bender", "profile": "signed-mm-lines",
          "link": {"kind": "tcp", "host": "127.0.0.1", "port": %d},
          "indicator": {"resolutionMm": 0.001, "permissibleErrorMm": 0.003, "travelMm": 12.7}}}
        """
        .formatted(port);
  }
}
