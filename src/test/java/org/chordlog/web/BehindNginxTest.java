package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManagerFactory;
import org.chordlog.account.Role;
import org.chordlog.harness.Openssl;
import org.chordlog.web.http.AddressRange;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The service behind a real proxy that ends TLS, in both ways that the handbook describes. */
@Tag("slow")
final class BehindNginxTest {
  @TempDir static Path folder;
  private static SSLContext trusting;
  private final List<Socket> streams = new ArrayList<>();

  @BeforeAll
  static void certificate() throws Exception {
    Openssl openssl = new Openssl(folder);
    Path issuer = openssl.issuer("issuer");
    openssl.issued("service", "issuer", 60, "ec");
    KeyStore known = KeyStore.getInstance(KeyStore.getDefaultType());
    known.load(null, null);
    try (var in = Files.newInputStream(issuer)) {
      known.setCertificateEntry(
          "issuer", CertificateFactory.getInstance("X.509").generateCertificate(in));
    }
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(known);
    trusting = SSLContext.getInstance("TLS");
    trusting.init(null, trust.getTrustManagers(), null);
  }

  @AfterEach
  void close() throws IOException {
    for (Socket each : streams) {
      each.close();
    }
  }

  static Stream<String> described() throws IOException {
    return Nginx.described().stream();
  }

  @Test
  void bothWaysAreDescribed() throws Exception {
    assertEquals(2, Nginx.described().size());
  }

  /** As the line above the configuration starts it. */
  private static Served served(Path data) {
    Reach reach =
        new Reach(Set.of(Nginx.NAME), List.of(AddressRange.read("127.0.0.1")), null).withAccounts();
    return new Served(data, new WebSettings("127.0.0.1", 0, "", 8, 2, 65_536, reach));
  }

  private static Path data() throws IOException {
    return Files.createTempDirectory(folder, "data");
  }

  /** A request by TLS from that address of this computer, its connection open. */
  private static Socket sent(Nginx proxy, String from, String request) throws IOException {
    Socket plain = new Socket();
    plain.bind(new InetSocketAddress(from, 0));
    plain.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), proxy.port()));
    plain.setSoTimeout(60_000);
    SSLSocket socket =
        (SSLSocket) trusting.getSocketFactory().createSocket(plain, Nginx.NAME, proxy.port(), true);
    socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
    return socket;
  }

  private static String answer(Nginx proxy, String from, String request) throws IOException {
    try (Socket socket = sent(proxy, from, request)) {
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String request(String line, String host, String body, String... more) {
    List<String> lines = new ArrayList<>(List.of(line + " HTTP/1.1", "Host: " + host));
    lines.addAll(List.of(more));
    lines.add("Connection: close");
    lines.add("Content-Length: " + body.length());
    return String.join("\r\n", lines) + "\r\n\r\n" + body;
  }

  private static String signIn(String host, String... more) {
    List<String> all = new ArrayList<>(List.of(more));
    all.add("Content-Type: application/json");
    String body = "{\"name\": \"Ann\", \"password\": \"%s\"}".formatted(ShopPeople.PASSWORD);
    return request("POST /api/session", host, body, all.toArray(String[]::new));
  }

  @ParameterizedTest
  @MethodSource("described")
  void namesOriginsAndCookiesAreThoseOfTheBrowser(String described) throws Exception {
    try (Served served = served(data());
        Nginx proxy = Nginx.start(folder, described, served.web.port())) {
      String unused = new ShopPeople(served).signedIn("Ann", Role.OPERATOR);
      String host = Nginx.NAME + ":" + proxy.port();
      String in = answer(proxy, "127.0.0.1", signIn(host, "Origin: https://" + host));
      assertTrue(in.startsWith("HTTP/1.1 204"), in);
      assertTrue(in.contains("Set-Cookie: __Host-chordlog="), in);
      assertTrue(in.contains("; SameSite=Strict; Secure"), in);
      String foreign = answer(proxy, "127.0.0.1", signIn(host, "Origin: https://evil.example"));
      assertTrue(foreign.startsWith("HTTP/1.1 403"), foreign);
      String rebound = answer(proxy, "127.0.0.1", signIn("rebound.test"));
      assertTrue(rebound.startsWith("HTTP/1.1 421"), rebound);
      String cookie = in.replaceAll("(?s).*Set-Cookie: ([^;]*);.*", "$1");
      String who =
          answer(proxy, "127.0.0.1", request("GET /api/session", host, "", "Cookie: " + cookie));
      assertTrue(who.contains("\"name\":\"Ann\"") && who.contains("\"encrypted\":true"), who);
    }
  }

  /** The first line of the answer; the stream stays open. */
  private String stream(Nginx proxy, String from, String cookie, String... more) throws Exception {
    List<String> all = new ArrayList<>(List.of("Cookie: " + cookie));
    all.addAll(List.of(more));
    String host = Nginx.NAME + ":" + proxy.port();
    Socket socket =
        sent(proxy, from, request("GET /api/events", host, "", all.toArray(String[]::new)));
    streams.add(socket);
    return lines(socket).readLine();
  }

  private static BufferedReader lines(Socket socket) throws IOException {
    return new BufferedReader(
        new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
  }

  private static String secure(ShopPeople people) {
    return "__Host-" + people.signedIn("Ann", Role.OPERATOR);
  }

  @ParameterizedTest
  @MethodSource("described")
  void eachAddressBehindTheProxyHasItsOwnShareWhateverItSays(String described) throws Exception {
    try (Served served = served(data());
        Nginx proxy = Nginx.start(folder, described, served.web.port())) {
      String cookie = secure(new ShopPeople(served));
      assertTrue(stream(proxy, "127.0.0.2", cookie).contains(" 200 "));
      assertTrue(stream(proxy, "127.0.0.2", cookie).contains(" 200 "));
      String third = stream(proxy, "127.0.0.2", cookie);
      assertTrue(third.contains(" 429 "), third);
      String claimed = stream(proxy, "127.0.0.2", cookie, "X-Forwarded-For: 10.9.9.9");
      assertTrue(claimed.contains(" 429 "), claimed);
      assertTrue(stream(proxy, "127.0.0.3", cookie).contains(" 200 "));
    }
  }

  /** A proxy that gathers some kilobytes first would show nothing of so short an event. */
  @ParameterizedTest
  @MethodSource("described")
  void eventsComeThroughAtOnce(String described) throws Exception {
    try (Served served = served(data());
        Nginx proxy = Nginx.start(folder, described, served.web.port())) {
      String cookie = secure(new ShopPeople(served));
      String host = Nginx.NAME + ":" + proxy.port();
      try (Socket socket =
          sent(proxy, "127.0.0.1", request("GET /api/events", host, "", "Cookie: " + cookie))) {
        BufferedReader lines = lines(socket);
        String line = lines.readLine();
        while (!line.equals("event: hello")) {
          line = lines.readLine();
        }
      }
    }
  }
}
