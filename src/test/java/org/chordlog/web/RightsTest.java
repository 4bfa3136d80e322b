package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.chordlog.account.Right;
import org.chordlog.account.Role;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every route with every role and method: let in only where the table of roles says so. */
@Tag("slow")
final class RightsTest {
  private static final List<String> METHODS = List.of("GET", "HEAD", "POST", "PUT", "DELETE");

  /** Rights of each role as the handbook has them, written out again. */
  private static final Map<Role, Set<Right>> TABLE =
      Map.of(
          Role.VIEWER, Set.of(),
          Role.OPERATOR, Set.of(Right.MEASURE, Right.ANSWER, Right.JOB, Right.ALERT),
          Role.QUALITY, Set.of(Right.MEASURE, Right.ANSWER, Right.JOB, Right.JUDGE, Right.ALERT),
          Role.MAINTENANCE, Set.of(Right.ANSWER, Right.MACHINE, Right.ALERT),
          Role.GAUGE_KEEPER, Set.of(Right.MEASURE, Right.ANSWER, Right.GAUGE, Right.ALERT),
          Role.ADMINISTRATOR, Set.of(Right.CONFIGURE, Right.ADMINISTER, Right.ALERT));

  @TempDir Path directory;

  private static Map<String, Right> needed(Served served) {
    Map<String, Right> needed = new HashMap<>();
    for (Route route : served.web.routes()) {
      String path = route.path().replaceAll("\\{\\w+}", "1");
      needed.put(route.method() + " " + path, route.right());
      if (route.hasHead()) {
        needed.put("HEAD " + path, route.right());
      }
    }
    needed.remove("DELETE /api/session"); // would end the session that asks
    needed.remove("GET /api/events"); // does not end
    return needed;
  }

  private static Set<String> paths(Map<String, Right> needed) {
    Set<String> paths = new TreeSet<>();
    needed.keySet().forEach(each -> paths.add(each.split(" ", 2)[1]));
    return paths;
  }

  @Test
  void eachRoleIsLetInWhereTheTableSaysAndNowhereElse() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      ShopPeople people = new ShopPeople(served);
      Map<String, Right> needed = needed(served);
      List<String> wrong = new ArrayList<>();
      for (Role role : Role.values()) {
        String cookie = people.signedIn(role.words(), role);
        for (String path : paths(needed)) {
          for (String method : METHODS) {
            Right right = needed.get(method + " " + path);
            if (right == null && path.matches("/api/(session|events)")) {
              continue;
            }
            int status = people.status(cookie, method, path + quickly(path), "");
            if (!asTheTableSays(role, right, status)) {
              wrong.add(role + " " + method + " " + path + " " + right + ": " + status);
            }
          }
        }
      }
      assertEquals(List.of(), wrong);
      assertTrue(needed.size() > 100, "routes: " + needed.size());
    }
  }

  /** Who is let in is told without working out the size of a study, which takes seconds. */
  private static String quickly(String path) {
    return path.equals("/api/study-size") ? "?expected=0" : "";
  }

  private static boolean asTheTableSays(Role role, @Nullable Right right, int status) {
    if (right == null) {
      return status == 404 || status == 405;
    }
    boolean may =
        right == Right.ANYONE
            || right == Right.LOOK
            || TABLE.getOrDefault(role, Set.of()).contains(right);
    return may ? status != 401 && status != 403 && status != 405 : status == 403;
  }

  @Test
  void nobodyIsLetInWithoutBeingSignedIn() throws Exception {
    try (Served served = ShopPeople.served(directory)) {
      Map<String, Right> needed = needed(served);
      List<String> wrong = new ArrayList<>();
      for (Map.Entry<String, Right> each : needed.entrySet()) {
        String[] row = each.getKey().split(" ", 2);
        HttpResponse<String> answer = served.send(row[0], row[1], "");
        boolean open = each.getValue() == Right.ANYONE;
        if (open == (answer.statusCode() == 401)) {
          wrong.add(each + ": " + answer.statusCode());
        }
      }
      assertEquals(List.of(), wrong);
      assertEquals(401, served.get("/api/events").statusCode());
      Set<String> open = new TreeSet<>();
      needed.forEach((row, right) -> open.addAll(right == Right.ANYONE ? Set.of(row) : Set.of()));
      open.removeIf(row -> row.startsWith("HEAD"));
      assertEquals(
          Set.of(
              "GET /api/charts.css",
              "GET /api/session",
              "GET /api/session/provider",
              "GET /api/session/provider/answer",
              "GET /api/words.js",
              "GET /health/live",
              "POST /api/session",
              "POST /api/session/activation"),
          open);
    }
  }
}
