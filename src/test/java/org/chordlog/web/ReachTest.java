package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.AddressRange;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which names are answered, whose word about the caller counts: requests as they go by wire. */
@Tag("slow")
final class ReachTest {
  private static final String TOKEN = "a-token-of-this-test";
  private static final Reach PROXIED =
      new Reach(Set.of("shop.example"), List.of(AddressRange.read("127.0.0.2")), null);
  private static final String NEW_JOB =
      String.join(
          "\r\n",
          "POST /api/jobs HTTP/1.1",
          "Chordlog-By: x",
          "Content-Type: application/json",
          "Content-Length: 2",
          "Connection: close",
          "");
  @TempDir Path directory;

  private static String look(String more) {
    return "GET /api/stations HTTP/1.1\r\nConnection: close\r\n" + more + "\r\n";
  }

  /** The status of the answer to a request that comes from that address of this computer. */
  private static int status(Served served, String from, String request) throws Exception {
    return Integer.parseInt(answer(served, from, request).substring(9, 12));
  }

  private static String answer(Served served, String from, String request) throws Exception {
    try (Socket socket = new Socket()) {
      socket.bind(new InetSocketAddress(from, 0));
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), served.web.port()));
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void beyondLoopbackAddressesAndGivenNamesAreAnswered() throws Exception {
    WebSettings open =
        new WebSettings("0.0.0.0", 0, TOKEN, 4, 4, 65_536)
            .reached(new Reach(Set.of("Shop.example"), List.of(), null));
    try (Served served = new Served(directory, open)) {
      for (String host : List.of("shop.example", "SHOP.example:8080", "10.1.2.3", "[fe80::1]:80")) {
        assertEquals(200, status(served, "127.0.0.1", look("Host: " + host + "\r\n")), host);
      }
      for (String host :
          List.of("rebound.test", "a.shop.example", "shop.example.test", "1.2.3.4.a")) {
        assertEquals(421, status(served, "127.0.0.1", look("Host: " + host + "\r\n")), host);
      }
    }
  }

  @Test
  void aProxyOnThisComputerMayPassTheNameOnOrTellIt() throws Exception {
    try (Served served = new Served(directory, WebSettings.onLoopback(0).reached(PROXIED))) {
      String origin = "Origin: https://shop.example\r\n\r\n{}";
      String passed = NEW_JOB + "Host: shop.example\r\n" + origin;
      assertTrue(answer(served, "127.0.0.1", passed).contains("name is missing"));
      String told = NEW_JOB + "Host: 127.0.0.1:8080\r\nX-Forwarded-Host: shop.example\r\n" + origin;
      assertTrue(answer(served, "127.0.0.2", told).contains("name is missing"));
      assertEquals(403, status(served, "127.0.0.1", told), "no trusted proxy");
      String foreign = passed.replace("https://shop", "https://evil");
      assertEquals(403, status(served, "127.0.0.1", foreign));
      String host = "Host: localhost\r\nX-Forwarded-Host: rebound.test\r\n";
      assertEquals(421, status(served, "127.0.0.2", look(host)));
      String odd = "Host: localhost\r\nX-Forwarded-Host: [a]:b/c\r\n";
      assertTrue(status(served, "127.0.0.2", look(odd)) >= 400);
    }
  }

  @Test
  void theAddressThatATrustedProxyPassesOnIsTheOneThatWaits() throws Exception {
    WebSettings open = new WebSettings("0.0.0.0", 0, TOKEN, 4, 4, 65_536).reached(PROXIED);
    try (Served served = new Served(directory, open)) {
      String from =
          "X-Forwarded-For: 9.9.9.9, %s\r\nHost: localhost\r\nAuthorization: Bearer %s\r\n\r\n{}";
      for (int i = 0; i < 11; i++) {
        String wrong = NEW_JOB + from.formatted("10.0.0.1", "wrong");
        assertTrue(status(served, "127.0.0.2", wrong) >= 401);
      }
      assertEquals(429, status(served, "127.0.0.2", NEW_JOB + from.formatted("10.0.0.1", TOKEN)));
      assertEquals(400, status(served, "127.0.0.2", NEW_JOB + from.formatted("10.0.0.3", TOKEN)));
      assertEquals(400, status(served, "127.0.0.1", NEW_JOB + from.formatted("10.0.0.1", TOKEN)));
    }
  }

  @Test
  void rangesHoldWhatTheirBitsSay() {
    AddressRange range = AddressRange.read("10.1.0.0/16");
    assertTrue(range.holds("10.1.255.3"));
    assertFalse(range.holds("10.2.0.0"));
    assertFalse(range.holds("shop.example"));
    assertTrue(AddressRange.read("fe80::/10").holds("febf::1"));
    assertFalse(AddressRange.read("fe80::/10").holds("10.1.2.3"));
    for (String wrong : List.of("shop", "10.1.0.0/33", "10.1.0.0/", "300.1.1.1", "")) {
      assertThrows(BadInput.class, () -> AddressRange.read(wrong), wrong);
    }
    assertThrows(BadInput.class, () -> new Reach(Set.of("a b"), List.of(), null));
  }
}
