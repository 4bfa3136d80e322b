package org.chordlog.web;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.chordlog.account.Right;
import org.chordlog.account.Role;
import org.chordlog.verdict.Vocabulary;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Route;

/**
 * The vocabulary as a module, so that pages have the words of the service and none of their own.
 */
final class WordsRoutes {
  private static final String MODULE = "export default " + Json.text(all()) + ";\n";

  List<Route> routes() {
    return List.of(
        Route.open("/api/words.js", "Words for what the API names in capitals, as a module")
            .sends(
                "text/javascript",
                call -> call.ctx().contentType("text/javascript; charset=utf-8").result(MODULE)));
  }

  /** Group to constant to words: of the trade, and of who may do what. */
  static Map<String, Map<String, String>> all() {
    Map<String, Map<String, String>> all = new LinkedHashMap<>(Vocabulary.all());
    all.put("roles", of(Role.values(), Role::words));
    all.put("roleTasks", of(Role.values(), Role::task));
    all.put("rights", of(Right.values(), Right::words));
    return all;
  }

  private static <E extends Enum<E>> Map<String, String> of(E[] values, Function<E, String> words) {
    return Arrays.stream(values)
        .collect(Collectors.toMap(Enum::name, words, (a, b) -> a, LinkedHashMap::new));
  }
}
