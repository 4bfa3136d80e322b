package org.chordlog.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.web.http.Refusal;

/**
 * Pages as they are served. A file in {@code dashboards} holds what is its own; added here are what
 * all heads share, and a preload line for each module that the page's module imports, so that a
 * browser fetches them at once instead of one import after the other. No page names its own service
 * by a path from the top of the host, so that it works below any path. Files are read anew each
 * time: a page under work is seen by loading it again, its modules and styles too, whose folder is
 * then another.
 */
final class Pages {
  private static final Pattern NAME = Pattern.compile("[a-z]+(-[a-z]+)*");
  private static final Pattern MODULE =
      Pattern.compile("<script type=\"module\" src=\"([\\w./-]+\\.js)\">");
  private static final Pattern IMPORT =
      Pattern.compile(
          "^(?:import|export)\\b[^;\"]*\"(\\.\\.?/)([\\w/-]+\\.js)\";", Pattern.MULTILINE);

  private Pages() {}

  /** Of the service at the machines. */
  static List<WebServer.PageRow> rows() {
    return Stream.concat(
            Stream.of(
                new WebServer.PageRow("/", Pages::serve),
                new WebServer.PageRow("/{page}.html", Pages::serve),
                new WebServer.PageRow("/help", HelpPages::first),
                new WebServer.PageRow("/help/{page}", HelpPages::serve)),
            KeptFiles.rows("").stream())
        .toList();
  }

  static void serve(Context ctx) {
    String name = ctx.pathParamMap().getOrDefault("page", "index");
    ctx.header("Cache-Control", "no-cache").html(page(name));
  }

  /** The HTML of a page by its name without ending; refused with 404 where there is none. */
  static String page(String name) {
    Optional<String> file = NAME.matcher(name).matches() ? read(name + ".html") : Optional.empty();
    return framed(file.orElseThrow(() -> Refusal.notFound("page", name)), "");
  }

  /** One of those that only a plant has. */
  static String ofPlant(String name) {
    return framed(read("plant/" + name + ".html").orElseThrow(), "");
  }

  /**
   * A page of its own with what all pages share; {@code up} leads from it to the front page: empty,
   * or {@code ../} for each folder.
   */
  static String framed(String own, String up) {
    return own.replace("<head>\n", "<head>\n" + sharedHead(up))
        .replace("</head>", preloads(own, up) + PRINT.formatted(up) + "</head>")
        .replace("=\"" + up + "parts/", "=\"" + up + KeptFiles.folder());
  }

  /** After the page's own styles. */
  private static final String PRINT =
      "  <link rel=\"stylesheet\" href=\"%sparts/print.css\" media=\"print\">\n";

  private static String sharedHead(String up) {
    return read("parts/head.html")
        .orElseThrow()
        .replaceAll("=\"(parts|fonts)/", "=\"" + up + "$1/");
  }

  private static String preloads(String page, String up) {
    Set<String> paths = new LinkedHashSet<>();
    MODULE
        .matcher(page)
        .results()
        .forEach(each -> addImports(each.group(1).substring(up.length()), paths));
    return paths.stream()
        .map(each -> "  <link rel=\"modulepreload\" href=\"%s\">\n".formatted(up + each))
        .collect(Collectors.joining());
  }

  /** What is served from elsewhere than the dashboards imports nothing. */
  private static void addImports(String module, Set<String> found) {
    String folder = module.substring(0, module.lastIndexOf('/') + 1);
    IMPORT
        .matcher(read(module).orElse(""))
        .results()
        .map(each -> (each.group(1).equals("./") ? folder : "") + each.group(2))
        .filter(found::add)
        .forEach(each -> addImports(each, found));
  }

  private static Optional<String> read(String file) {
    try (InputStream in = Pages.class.getResourceAsStream("/dashboards/" + file)) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
