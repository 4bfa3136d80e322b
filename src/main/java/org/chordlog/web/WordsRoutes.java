package org.chordlog.web;

import java.util.List;
import org.chordlog.verdict.Vocabulary;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Route;

/**
 * The vocabulary as a module, so that pages have the words of the service and none of their own.
 */
final class WordsRoutes {
  private static final String MODULE = "export default " + Json.text(Vocabulary.all()) + ";\n";

  List<Route> routes() {
    return List.of(
        Route.open("/api/words.js", "Words for what the API names in capitals, as a module")
            .sends(
                "text/javascript",
                call -> call.ctx().contentType("text/javascript; charset=utf-8").result(MODULE)));
  }
}
