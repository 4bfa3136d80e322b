package org.chordlog.web;

import io.javalin.http.Context;
import java.util.stream.Collectors;
import org.chordlog.web.http.Refusal;

/** The help: pages of the handbook in the frame of all pages. */
final class HelpPages {
  private static final String FRAME =
      """
      <!doctype html>
      <html lang="en">
      <head>
        <title>%s · Chordlog</title>
        <link rel="stylesheet" href="../parts/help.css">
        <script type="module" src="../parts/help.js"></script>
      </head>
      <body>
        <main class="help">
          <nav class="sheet" aria-label="Help">
            <ul>
      %s      </ul>
          </nav>
          <article class="sheet">
      %s    </article>
        </main>
      </body>
      </html>
      """;

  private HelpPages() {}

  /** The first page is one of a folder too, so that all links between pages are alike. */
  static void first(Context ctx) {
    ctx.redirect("help/start");
  }

  static void serve(Context ctx) {
    String name = ctx.pathParam("page");
    ctx.header("Cache-Control", "no-cache").html(page(name));
  }

  /** Refused with 404 where there is no such page. */
  static String page(String name) {
    String text = Handbook.html(name).orElseThrow(() -> Refusal.notFound("page of the help", name));
    return Pages.framed(FRAME.formatted(Handbook.TITLES.get(name), places(name), text), "../");
  }

  private static String places(String here) {
    return Handbook.TITLES.entrySet().stream()
        .map(
            each ->
                "        <li><a href=\"%s\"%s>%s</a></li>\n"
                    .formatted(
                        each.getKey(),
                        each.getKey().equals(here) ? " aria-current=\"page\"" : "",
                        each.getValue()))
        .collect(Collectors.joining());
  }
}
