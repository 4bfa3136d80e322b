package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.CookieManager;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.harness.Openssl;
import org.chordlog.trust.IssuerFile;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * npm's oidc-provider by https, with a certificate of the plant's own issuer: trusted where {@code
 * trustedCertificates} names that issuer, and nowhere else. The certificates are openssl's.
 */
@Tag("slow")
final class TrustedProviderTest {
  private static final Pattern FORM = Pattern.compile("action=\"([^\"]+/interaction/[^\"]+)\"");
  @TempDir Path folder;

  /** A service for this provider; its port is the one that the provider knows. */
  private Served served(OpenIdProcess provider, int port, String more) throws Exception {
    Path settings = OpenIdSettingsFile.written(folder, provider.issuer());
    Files.writeString(settings, more, StandardOpenOption.APPEND);
    Reach reach = Reach.PLAIN.withProvider(settings);
    Path data = Files.createTempDirectory(folder, "data");
    return new Served(data, WebSettings.onLoopback(port).reached(reach));
  }

  private static int free() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  private OpenIdProcess provider(int port) throws Exception {
    Openssl openssl = new Openssl(folder);
    Path unused = openssl.issuer("plant");
    unused = openssl.issuer("another");
    unused = openssl.issued("provider", "plant", 20, "rsa:2048");
    return OpenIdProcess.secure(folder, port, "provider");
  }

  /** As a browser of the plant, which knows that issuer. */
  private HttpClient browser() {
    return HttpClient.newBuilder()
        .sslContext(IssuerFile.trusting("plant", folder.resolve("plant.pem")))
        .cookieHandler(new CookieManager())
        .followRedirects(Redirect.ALWAYS)
        .build();
  }

  private static HttpResponse<String> get(HttpClient browser, Served served, String path)
      throws Exception {
    URI address = URI.create("http://localhost:" + served.web.port() + path);
    return browser.send(HttpRequest.newBuilder(address).build(), BodyHandlers.ofString());
  }

  /** The form on the page, sent. */
  private static HttpResponse<String> send(HttpClient browser, String page, String body)
      throws Exception {
    Matcher form = FORM.matcher(page);
    assertTrue(form.find(), page);
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(form.group(1)))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body))
            .build();
    return browser.send(request, BodyHandlers.ofString());
  }

  @Test
  void aProviderOfAnIssuerThatTheFileNamesSignsPeopleIn() throws Exception {
    int port = free();
    try (OpenIdProcess provider = provider(port);
        Served served = served(provider, port, "trustedCertificates: plant.pem\n")) {
      HttpClient browser = browser();
      String login = get(browser, served, "/api/session/provider?to=/jobs.html").body();
      String consent = send(browser, login, "prompt=login&login=ann&password=any").body();
      HttpResponse<String> back = send(browser, consent, "prompt=consent");
      assertEquals("/jobs.html", back.uri().getPath(), back::body);
      String session = get(browser, served, "/api/session").body();
      assertTrue(session.contains("\"Ann Arbor\""), session);
    }
  }

  @Test
  void aProviderOfAnotherIssuerIsNotTrusted() throws Exception {
    int port = free();
    try (OpenIdProcess provider = provider(port)) {
      for (String trusted : new String[] {"", "trustedCertificates: another.pem\n"}) {
        try (Served served = served(provider, port, trusted)) {
          HttpResponse<String> answer = get(browser(), served, "/api/session/provider");
          assertEquals("/sign-in.html", answer.uri().getPath(), trusted);
          assertEquals("refused=away", answer.uri().getQuery().replaceAll("&.*", ""), trusted);
          assertFalse(get(browser(), served, "/api/session").body().contains("Ann"), trusted);
        }
      }
    }
  }
}
