package org.chordlog.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URLConnection;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.chordlog.web.http.Refusal;

/**
 * Modules and styles of the pages in a folder whose name changes with their content: a browser
 * keeps them for good and asks for none of them again when it goes from page to page. Who asks by
 * the name of another content, as a page does that was loaded before an update, gets those of now
 * and is to ask again.
 */
final class KeptFiles {
  /** RFC 8246, section 2. */
  private static final String FOR_GOOD = "max-age=31536000, immutable";

  private static final String NOT_KEPT = "no-cache";
  private static final String FOR_A_DAY = "max-age=86400";
  private static final String PARTS = "/dashboards/parts/";
  private static final Pattern FILE = Pattern.compile("[\\w-]+\\.(js|css|svg|ttf|png)");
  private static final Map<String, String> TYPES =
      Map.of("js", "text/javascript", "css", "text/css", "svg", "image/svg+xml", "ttf", "font/ttf");

  private KeptFiles() {}

  /** Beside the pages below {@code above}: these, and the folders that bear a plain name. */
  static List<WebServer.PageRow> rows(String above) {
    return List.of(
        new WebServer.PageRow(above + "/parts-{content}/{file}", KeptFiles::kept),
        plain(above + "/parts", PARTS, NOT_KEPT),
        plain(above + "/help/pictures", "/help/pictures/", NOT_KEPT),
        plain(above + "/fonts", "/fonts/", FOR_A_DAY));
  }

  private static WebServer.PageRow plain(String at, String folder, String caching) {
    return new WebServer.PageRow(at + "/{file}", ctx -> send(ctx, folder, caching));
  }

  /** The folder beside a page; ends with a slash. */
  static String folder() {
    return "parts-" + FilesContent.now() + "/";
  }

  private static void kept(Context ctx) {
    boolean now = ctx.pathParam("content").equals(FilesContent.now());
    send(ctx, PARTS, now ? FOR_GOOD : NOT_KEPT);
  }

  private static void send(Context ctx, String folder, String caching) {
    String name = ctx.pathParam("file");
    String end = name.substring(name.lastIndexOf('.') + 1);
    String type = TYPES.getOrDefault(end, URLConnection.guessContentTypeFromName(name));
    ctx.header("Cache-Control", caching).contentType(type).result(read(folder, name));
  }

  private static byte[] read(String folder, String name) {
    if (!FILE.matcher(name).matches()) {
      throw Refusal.notFound("file", name);
    }
    try (InputStream in = KeptFiles.class.getResourceAsStream(folder + name)) {
      if (in == null) {
        throw Refusal.notFound("file", name);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
