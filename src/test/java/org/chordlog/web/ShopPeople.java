package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.chordlog.account.ChosenPassword;
import org.chordlog.account.People;
import org.chordlog.account.Role;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;

/** The real service where people sign in, and people who do; their names are invented. */
record ShopPeople(Served served) {
  static final String PASSWORD = ChosenPassword.TEXT;
  static final String NOTE = "{\"kind\": \"NOTE\", \"note\": \"a remark\"}";

  /** The cookie that an answer sets, without its attributes. */
  static String cookie(HttpResponse<String> answer) {
    String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(set.contains("; Path=/; HttpOnly; SameSite=Strict"), set);
    return set.substring(0, set.indexOf(';'));
  }

  static Served served(Path directory) {
    Reach reach = Reach.PLAIN.withAccounts();
    return new Served(directory, WebSettings.onLoopback(0).reached(reach));
  }

  People.WithCode added(String name, Role... roles) {
    List<String> names = Arrays.stream(roles).map(Enum::name).toList();
    return served.web.entrance().people().add(name, names, "a test");
  }

  /** The cookie of a new person who has chosen a password. */
  String signedIn(String name, Role... roles) {
    return "chordlog=" + ChosenPassword.begin(served.web.entrance(), added(name, roles).person());
  }

  HttpResponse<String> signIn(String name, String password) throws Exception {
    String body = "{\"name\": \"%s\", \"password\": \"%s\"}".formatted(name, password);
    return served.send("POST", "/api/session", body, "Content-Type", "application/json");
  }

  /** As a page of that session asks. */
  HttpResponse<String> ask(String cookie, String method, String path, String body)
      throws Exception {
    String[] headers = {
      "Cookie", cookie, Call.BY, "somebody else", "Content-Type", "application/json"
    };
    return served.send(method, path, body, headers);
  }

  int status(String cookie, String method, String path, String body) throws Exception {
    return ask(cookie, method, path, body).statusCode();
  }

  /** Of the account with that name. */
  long id(String name) {
    return served.web.entrance().people().all().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow()
        .id();
  }
}
