package org.chordlog.web.openid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.trust.SecretFile;
import org.chordlog.web.openid.CrookedProvider.Lie;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The provider's keys: kept while it does not give them, asked for again where one is new. */
@Tag("slow")
final class ProviderKeysTest {
  private static final String SECRET = "an invented secret of 32 letters";
  private static final Duration FRESH = Duration.ofMillis(1_100);
  private static final URI BACK = URI.create("http://localhost/back");

  @TempDir static Path folder;

  private static OpenIdSettings settings(URI issuer) throws IOException {
    Path file = Files.writeString(folder.resolve("secret"), SECRET);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    SecretFile secret = SecretFile.named("clientSecretFile", "secret", folder);
    return new OpenIdSettings(
        new OpenIdSettings.Place(issuer, null),
        "the plant",
        new OpenIdSettings.Client(CrookedProvider.CLIENT, secret, "openid"),
        "groups",
        Map.of("benders", Set.of("OPERATOR")));
  }

  private static String signedIn(Provider provider, CrookedProvider at) throws NotProved {
    Attempt attempt = Attempt.begun();
    at.tells(Lie.NONE, attempt.nonce().getValue());
    Map<String, List<String>> brought =
        Map.of("code", List.of("c"), "state", List.of(attempt.state().getValue()));
    return provider.proved(attempt, BACK, brought).subject();
  }

  @Test
  void oldKeysStayInUseWhileTheProviderDoesNotGiveThem() throws Exception {
    try (CrookedProvider at = new CrookedProvider(SECRET)) {
      Provider provider = new Provider(settings(at.issuer()), FRESH);
      assertEquals("4711", signedIn(provider, at));
      at.keysAreAway(true);
      long before = System.nanoTime();
      Await.until(() -> System.nanoTime() - before > FRESH.toNanos());
      assertEquals("4711", signedIn(provider, at));
    }
  }

  @Test
  void aNewKeyIsFetchedWhenATokenNamesIt() throws Exception {
    try (CrookedProvider at = new CrookedProvider(SECRET)) {
      Provider provider = new Provider(settings(at.issuer()), Duration.ofMinutes(5));
      assertEquals("4711", signedIn(provider, at));
      at.renewKey();
      Await.until(() -> "4711".equals(triedIn(provider, at)));
    }
  }

  private static String triedIn(Provider provider, CrookedProvider at) {
    try {
      return signedIn(provider, at);
    } catch (NotProved e) {
      return e.reason().name();
    }
  }

  @Test
  void anAnswerOfAnotherProviderIsRefused() throws Exception {
    try (CrookedProvider at = new CrookedProvider(SECRET)) {
      Provider provider = new Provider(settings(at.issuer()), Duration.ofMinutes(5));
      Attempt attempt = Attempt.begun();
      Map<String, List<String>> brought =
          Map.of(
              "code", List.of("c"),
              "state", List.of(attempt.state().getValue()),
              "iss", List.of("https://other.example"));
      NotProved refused =
          assertThrows(NotProved.class, () -> provider.proved(attempt, BACK, brought));
      assertEquals(NotProved.Reason.UNPROVED, refused.reason());
    }
  }
}
