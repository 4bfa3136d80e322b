package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.URLDecoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.chordlog.web.openid.CrookedProvider;
import org.chordlog.web.openid.CrookedProvider.Lie;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A provider that lies, over HTTP: nobody is signed in by what is not proved. */
@Tag("slow")
final class ProviderFaultsTest {
  private static final String HERE = "/api/session/provider";
  @TempDir static Path folder;
  private static CrookedProvider provider;
  private static Served served;

  @BeforeAll
  static void serve() throws Exception {
    provider = new CrookedProvider(OpenIdSettingsFile.SECRET);
    served = served(folder.resolve("data"), provider.issuer());
  }

  private static Served served(Path data, URI issuer) throws Exception {
    Path settings = OpenIdSettingsFile.written(folder, issuer);
    Reach reach = Reach.PLAIN.withProvider(settings);
    return new Served(data, WebSettings.onLoopback(0).reached(reach));
  }

  @AfterAll
  static void close() {
    served.close();
    provider.close();
  }

  /** Begun by a browser: its cookie, and the query it was sent to the provider with. */
  private record Begun(String cookie, Map<String, String> query) {
    String value(String name) {
      return query.getOrDefault(name, "");
    }
  }

  private Begun begin(String to) throws Exception {
    HttpResponse<String> answer = served.get(HERE + "?to=" + to);
    assertEquals(302, answer.statusCode());
    String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(set.contains("; HttpOnly; SameSite=Lax"), set);
    URI there = URI.create(answer.headers().firstValue("Location").orElseThrow());
    assertEquals(provider.issuer() + "/authorize", there.toString().replaceAll("\\?.*", ""));
    return new Begun(set.substring(0, set.indexOf(';')), query(there));
  }

  private static Map<String, String> query(URI there) {
    Map<String, String> query = new HashMap<>();
    for (String each : there.getRawQuery().split("&", -1)) {
      String[] both = each.split("=", 2);
      query.put(both[0], URLDecoder.decode(both[1], StandardCharsets.UTF_8));
    }
    return query;
  }

  private HttpResponse<String> back(String cookie, String state) throws Exception {
    return served.get(HERE + "/answer?code=abc&state=" + state, "Cookie", cookie);
  }

  private HttpResponse<String> back(Begun begun) throws Exception {
    return back(begun.cookie(), begun.value("state"));
  }

  private static String place(HttpResponse<String> answer) {
    assertEquals(302, answer.statusCode(), answer::body);
    return answer.headers().firstValue("Location").orElseThrow().replaceAll("http://[^/]*", "");
  }

  private static boolean signedIn(HttpResponse<String> answer) {
    return answer.headers().allValues("set-cookie").stream()
        .anyMatch(each -> each.startsWith("chordlog="));
  }

  @Test
  void theProvedOneIsSignedInAndLedBack() throws Exception {
    Begun begun = begin("/jobs.html%3Fstate=open");
    assertEquals("S256", begun.value("code_challenge_method"));
    provider.tells(Lie.NONE, begun.value("nonce"));
    HttpResponse<String> answer = back(begun);
    assertEquals("/jobs.html?state=open", place(answer));
    assertTrue(signedIn(answer));
    String session =
        answer.headers().allValues("set-cookie").stream()
            .filter(each -> each.startsWith("chordlog="))
            .findFirst()
            .orElseThrow();
    assertTrue(session.contains("SameSite=Strict"), session);
    String cookie = session.substring(0, session.indexOf(';'));
    assertEquals(
        "Ann", Served.tree(served.get("/api/session", "Cookie", cookie)).path("name").asText());
    assertEquals(begun.value("code_challenge"), challenge(provider.asked()));
    assertTrue(provider.asked().contains(" Basic "), provider::asked);
  }

  /** RFC 7636, 4.2, of the verifier in that body. */
  private static String challenge(String asked) throws Exception {
    String verifier = asked.replaceAll("(?s).*code_verifier=([^& ]*).*", "$1");
    byte[] sha =
        MessageDigest.getInstance("SHA-256").digest(verifier.getBytes(StandardCharsets.US_ASCII));
    return Base64.getUrlEncoder().withoutPadding().encodeToString(sha);
  }

  @ParameterizedTest
  @EnumSource(
      value = Lie.class,
      mode = EnumSource.Mode.EXCLUDE,
      names = {"NONE", "OVER_FOR_30_SECONDS"})
  void nobodyIsSignedInByALie(Lie lie) throws Exception {
    int people = people();
    Begun begun = begin("/");
    provider.tells(lie, begun.value("nonce"));
    HttpResponse<String> answer = back(begun);
    assertTrue(
        place(answer).matches("/sign-in\\.html\\?refused=(unproved|denied|away)"), place(answer));
    assertTrue(!signedIn(answer), lie::name);
    assertEquals(people, people());
  }

  private static int people() {
    return served.web.entrance().people().all().size();
  }

  @Test
  void aClockThatDiffersByHalfAMinuteIsAllowedFor() throws Exception {
    Begun begun = begin("/");
    provider.tells(Lie.OVER_FOR_30_SECONDS, begun.value("nonce"));
    assertTrue(signedIn(back(begun)));
  }

  @Test
  void anAnswerThatThisBrowserDidNotAskForIsRefused() throws Exception {
    Begun own = begin("/");
    Begun others = begin("/");
    provider.tells(Lie.NONE, others.value("nonce"));
    assertEquals("/sign-in.html?refused=stale", place(back(own.cookie(), others.value("state"))));
    assertEquals("/sign-in.html?refused=stale", place(back("a=b", others.value("state"))));
    HttpResponse<String> denied =
        served.get(
            HERE + "/answer?error=access_denied&state=" + own.value("state"),
            "Cookie",
            own.cookie());
    assertEquals("/sign-in.html?refused=denied", place(denied));
  }

  @Test
  void itLeadsBackToPagesOfThisServiceOnly() throws Exception {
    for (String elsewhere : List.of("//evil.example", "https://evil.example", "/%5Cevil.example")) {
      Begun begun = begin(elsewhere);
      provider.tells(Lie.NONE, begun.value("nonce"));
      assertEquals("/", place(back(begun)), elsewhere);
    }
  }

  @Test
  void aProviderThatIsAwayIsSaidToBe() throws Exception {
    URI away;
    try (CrookedProvider closed = new CrookedProvider(OpenIdSettingsFile.SECRET)) {
      away = closed.issuer();
    }
    try (Served other = served(folder.resolve("other"), away)) {
      assertEquals("/sign-in.html?refused=away", place(other.get(HERE)));
    }
  }
}
