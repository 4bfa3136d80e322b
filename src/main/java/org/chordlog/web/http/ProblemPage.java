package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;

/** A refusal as a page, where somebody followed a link or typed an address; programs get JSON. */
final class ProblemPage {
  private ProblemPage() {}

  /** Whether a browser asks for a page rather than a program for data. */
  static boolean wanted(Context ctx) {
    String accepted = ctx.header("Accept");
    return HandlerType.GET.equals(ctx.method())
        && accepted != null
        && accepted.contains("text/html")
        && !ctx.path().contains("/api/");
  }

  /** {@code path} is that of the request; its folders are left by the links. */
  static String of(Problem problem, String path) {
    long folders = path.chars().filter(each -> each == '/').count() - 1;
    String up = folders > 0 ? "../".repeat((int) folders) : "./";
    return """
        <!doctype html>
        <html lang="en">
        <head>
          <meta charset="utf-8">
          <meta name="viewport" content="width=device-width, initial-scale=1">
          <title>%2$s · Chordlog</title>
          <script src="%1$sparts/theme.js"></script>
          <link rel="stylesheet" href="%1$sparts/look.css">
        </head>
        <body>
          <main>
            <h1>%2$s</h1>
            <p>%3$s</p>
            <p><a href="%1$s">To the first page</a></p>
          </main>
        </body>
        </html>
        """
        .formatted(up, problem.title(), escaped(problem.detail().toString()));
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
