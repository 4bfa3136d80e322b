package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.harness.Openssl;
import org.chordlog.harness.Ran;
import org.chordlog.measure.BadInput;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.TlsFiles;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** The service by https, looked at by openssl and by the program's own commands. */
@Tag("slow")
final class TlsTest {
  @TempDir Path folder;
  private Openssl openssl;

  @BeforeEach
  void issuer() throws Exception {
    openssl = new Openssl(folder);
    openssl.issuer("issuer");
    use("first", 60);
  }

  /** A new certificate and its key take the place of the files that the service was given. */
  private void use(String name, int days) throws Exception {
    openssl.issued(name, "issuer", days, "ec");
    place(name + ".pem", "service.pem");
    place(name + ".key", "service.key");
  }

  private void place(String from, String to) throws IOException {
    Path made = Files.copy(folder.resolve(from), folder.resolve(to + ".new"));
    Files.move(made, folder.resolve(to), StandardCopyOption.REPLACE_EXISTING);
  }

  private Served served() {
    TlsFiles files =
        new TlsFiles(
            folder.resolve("service.pem"), folder.resolve("service.key"), Duration.ofMillis(300));
    Reach reach = new Reach(Set.of(), List.of(), files);
    return new Served(folder.resolve("data"), WebSettings.onLoopback(0).reached(reach));
  }

  private Openssl.Ended client(Served served, String request, String... more) throws Exception {
    List<String> all =
        new ArrayList<>(
            List.of("s_client", "-connect", "127.0.0.1:" + served.web.port(), "-CAfile"));
    all.addAll(List.of("issuer.pem", "-verify_return_error", "-ign_eof"));
    all.addAll(List.of(more));
    return openssl.ends(request, all.toArray(String[]::new));
  }

  private static String request(String path) {
    return "GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";
  }

  private JsonNode health(Served served) throws Exception {
    String answer = client(served, request("/health"), "-quiet").text();
    return Json.shared().readTree(answer.substring(answer.indexOf("\r\n{") + 2).strip());
  }

  private String subject(Served served) throws Exception {
    return client(served, request("/health/live")).text();
  }

  @WaitingTest
  void version12And13AreSpokenOlderOnesAndPlainHttpAreNot() throws Exception {
    try (Served served = served()) {
      for (String version : List.of("-tls1_2", "-tls1_3")) {
        Openssl.Ended ended = client(served, request("/health/live"), version);
        assertTrue(ended.text().contains("HTTP/1.1 204"), ended::text);
        assertTrue(ended.text().contains("Verify return code: 0 (ok)"), ended::text);
      }
      String[] old = {"-tls1_1", "-cipher", "ALL:@SECLEVEL=0"};
      Openssl.Ended refused = client(served, request("/health/live"), old);
      assertFalse(refused.text().contains("HTTP/1.1"), refused::text);
      assertTrue(refused.code() != 0, refused::text);
      assertFalse(plainly(served).startsWith("HTTP/"), "answered without TLS");
    }
  }

  private static String plainly(Served served) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.web.port())) {
      socket.getOutputStream().write(request("/health").getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
    } catch (IOException reset) {
      return "";
    }
  }

  @WaitingTest
  void aRenewedCertificateIsUsedWithoutAStartAndAWrongOneIsNot() throws Exception {
    try (Served served = served()) {
      assertTrue(subject(served).contains("CN = first"), subject(served));
      assertEquals(59, health(served).at("/certificate/daysLeft").asInt());
      use("second", 20);
      Await.until(() -> subject(served).contains("CN = second"));
      JsonNode near = health(served);
      assertEquals("DEGRADED", near.get("status").asText());
      assertTrue(near.get("reasons").toString().contains("certificate: 19 days left"));
      String metrics = client(served, request("/metrics"), "-quiet").text();
      assertTrue(metrics.contains("chordlog_certificate_days_left 19"), metrics);
      place("first.key", "service.key");
      Await.until(() -> !health(served).at("/certificate/problem").asText().isEmpty());
      String problem = health(served).at("/certificate/problem").asText();
      assertTrue(problem.contains("does not belong to the certificate"), problem);
      assertTrue(subject(served).contains("CN = second"));
      use("third", 90);
      Await.until(() -> subject(served).contains("CN = third"));
      assertEquals("", health(served).at("/certificate/problem").asText());
    }
  }

  @WaitingTest
  void commandsReachItWhereTheIssuerIsGiven() throws Exception {
    try (Served served = served()) {
      String at = "https://localhost:" + served.web.port();
      String[] command = {"calibrations", "--service", at};
      Ran unknown = Ran.command(List.of(command));
      assertEquals(1, unknown.code());
      assertTrue(unknown.err().contains("--ca-file"), unknown::err);
      String issuer = folder.resolve("issuer.pem").toString();
      Ran ran = Ran.command(List.of(command), "--ca-file", issuer);
      assertEquals(0, ran.code(), ran::err);
      Ran wrong = Ran.command(List.of(command), "--ca-file", folder.resolve("none").toString());
      assertEquals(2, wrong.code());
      assertTrue(wrong.err().contains("--ca-file"), wrong::err);
    }
  }

  @WaitingTest
  void aServiceWhoseFilesAreOfNoUseDoesNotStart() throws Exception {
    place("issuer.key", "service.key");
    BadInput refused = assertThrows(BadInput.class, this::served);
    assertEquals(TlsFiles.KEY, refused.faults().get(0).field());
  }

  @WaitingTest
  void aSlowHandshakeIsCutOff() throws Exception {
    try (Served served = served();
        Socket slow = new Socket(InetAddress.getLoopbackAddress(), served.web.port())) {
      slow.getOutputStream().write(new byte[] {0x16, 3, 1, 2, 0, 1});
      Await.until(() -> !takes(slow));
      assertTrue(client(served, request("/health/live")).text().contains("HTTP/1.1 204"));
    }
  }

  private static boolean takes(Socket slow) {
    try {
      slow.getOutputStream().write(0);
      slow.setSoTimeout(200);
      return slow.getInputStream().read() >= 0;
    } catch (SocketTimeoutException e) {
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
