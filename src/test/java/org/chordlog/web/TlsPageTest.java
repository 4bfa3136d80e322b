package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.harness.Openssl;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.TlsFiles;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/** Pages by https in a real browser, which refuses the issuer that it does not know. */
final class TlsPageTest extends BrowserTest {
  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void serve() throws Exception {
    Openssl openssl = new Openssl(folder);
    openssl.issuer("issuer");
    TlsFiles files =
        new TlsFiles(openssl.issued("one", "issuer", 12, "ec"), folder.resolve("one.key"));
    WebSettings settings = WebSettings.onLoopback(0).reached(new Reach(Set.of(), List.of(), files));
    served = new Served(folder.resolve("data"), settings);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @Test
  void aPageIsLiveByHttpsAndSaysHowLongTheCertificateIsValid() throws Exception {
    String front = "https://127.0.0.1:" + served.web.port() + "/";
    Object refusal = Blink.run(browser, "Page.navigate", Map.of("url", front)).get("errorText");
    assertEquals("net::ERR_CERT_AUTHORITY_INVALID", refusal);
    trustEverybody(true);
    try {
      browser.get(front);
      assertLiveWithItsCertificate();
    } finally {
      trustEverybody(false);
    }
  }

  private static void trustEverybody(boolean trusted) {
    Blink.run(browser, "Security.setIgnoreCertificateErrors", Map.of("ignore", trusted));
  }

  private static void assertLiveWithItsCertificate() throws Exception {
    Await.until(
        () ->
            browser.findElements(By.id("freshness")).stream()
                .anyMatch(e -> e.getText().equals("Live")));
    Await.until(() -> !browser.findElements(By.id("certificate")).isEmpty());
    assertEquals(
        "The certificate of this service is valid for 11 more days. Renew it.",
        browser.findElement(By.id("certificate")).getText());
  }
}
