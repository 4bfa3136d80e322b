package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.chordlog.account.People;
import org.chordlog.account.Right;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line looks after accounts at a running service. */
@Tag("slow")
final class AccountCommandTest {
  @TempDir Path directory;

  /** An account command with the token of a program that may administer. */
  private Ran account(Served served, String... words) throws Exception {
    Path token = directory.resolve("token");
    if (Files.notExists(token)) {
      List<String> rights = List.of("administer");
      String secret = served.web.entrance().tokens().add("shell", rights, 1, "a test").secret();
      Files.writeString(token, secret);
    }
    List<String> all = new ArrayList<>(List.of("account"));
    all.addAll(List.of(words));
    String at = "http://127.0.0.1:" + served.web.port();
    return Ran.command(all, "--service", at, "--token-file", token.toString());
  }

  private static String said(Ran ran) {
    assertEquals(0, ran.code(), ran::err);
    return ran.out().strip();
  }

  @Test
  void peopleAreAddedChangedAndDisabled() throws Exception {
    try (Served served = ShopPeople.served(directory.resolve("data"))) {
      String added = said(account(served, "add", "Cleo", "--role", "gauge-keeper,operator"));
      assertTrue(added.startsWith("Cleo chooses a password at /sign-in.html with"), added);
      assertEquals(
          "Cleo: gauge keeper, operator, has not chosen a password yet",
          said(account(served, "list")));
      assertEquals(
          "Cleo: viewer, has not chosen a password yet",
          said(account(served, "roles", "cleo", "--role", "viewer")));
      assertEquals("Cleo: viewer, disabled", said(account(served, "disable", "Cleo")));
      Ran wrong = account(served, "add", "Dan", "--role", "boss");
      assertEquals(2, wrong.code());
      assertTrue(wrong.err().contains("is not a role; allowed: viewer, operator"), wrong::err);
      Ran nobody = account(served, "enable", "Nobody");
      assertEquals(1, nobody.code());
      assertTrue(nobody.err().contains("There is no Nobody"), nobody::err);
    }
  }

  @Test
  void withoutATokenTheOptionForItIsNamed() throws Exception {
    try (Served served = ShopPeople.served(directory.resolve("data"))) {
      String at = "http://127.0.0.1:" + served.web.port();
      Ran ran = Ran.command("account", "list", "--service", at);
      assertEquals(1, ran.code());
      assertTrue(ran.err().contains("by --token-file FILE"), ran::err);
      Path empty = Files.writeString(directory.resolve("token"), "\n");
      Ran blank = Ran.command("account", "list", "--token-file", empty.toString());
      assertEquals(2, blank.code());
      assertTrue(blank.err().contains("is empty; allowed: a file with the token"), blank::err);
    }
  }

  @Test
  void theHelpNamesEveryRightOfAToken() {
    String help = Ran.line("account token --help").out();
    Stream.of(Right.values())
        .skip(1)
        .map(each -> each.name().toLowerCase(Locale.ROOT))
        .forEach(right -> assertTrue(help.contains(right), () -> right + help));
  }

  @Test
  void tokensAreMadeAndRevoked() throws Exception {
    try (Served served = ShopPeople.served(directory.resolve("data"))) {
      String secret = said(account(served, "token", "scraper", "--right", "look", "--days", "9"));
      assertTrue(secret.startsWith("clg_"), secret);
      String[] bearer = {"Authorization", "Bearer " + secret};
      assertEquals(200, served.get("/api/stations", bearer).statusCode());
      assertEquals("scraper is revoked.", said(account(served, "token", "scraper", "--revoke")));
      assertEquals(401, served.get("/api/stations", bearer).statusCode());
    }
  }

  @Test
  void whoHoldsTheDataRecoversAnAccountWhileTheServiceIsStopped() throws Exception {
    Path data = directory.resolve("data");
    String[] recover = {"account", "recover", "administrator", "--data", data.toString()};
    try (Served served = ShopPeople.served(data)) {
      People.WithCode first = served.web.entrance().people().first().orElseThrow();
      assertEquals("administrator", first.person().name());
      String session =
          served
              .web
              .entrance()
              .activate("administrator", first.code(), ShopPeople.PASSWORD, "here");
      assertFalse(session.isEmpty());
      assertTrue(served.web.entrance().people().first().isEmpty());
      Ran running = Ran.command(recover);
      assertTrue(running.code() != 0, running::out);
    }
    String said = said(Ran.command(recover));
    String code = said.replaceFirst(".* code ([A-Z0-9-]+),.*", "$1");
    try (Served served = ShopPeople.served(data)) {
      ShopPeople people = new ShopPeople(served);
      assertEquals(401, people.signIn("administrator", ShopPeople.PASSWORD).statusCode());
      assertFalse(
          served.web.entrance().activate("administrator", code, "a new long word", "x").isEmpty());
    }
  }
}
