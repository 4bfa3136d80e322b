package org.chordlog.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URLConnection;
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
  private static final Pattern FILE = Pattern.compile("[\\w-]+\\.(js|css|svg|ttf|png)");
  private static final Map<String, String> TYPES =
      Map.of("js", "text/javascript", "css", "text/css", "svg", "image/svg+xml", "ttf", "font/ttf");

  private KeptFiles() {}

  /** Beside the pages below {@code above}, as is the folder that bears the plain name. */
  static WebServer.PageRow row(String above) {
    return new WebServer.PageRow(above + "/parts-{content}/{file}", KeptFiles::kept);
  }

  /** The folder beside a page; ends with a slash. */
  static String folder() {
    return "parts-" + FilesContent.now() + "/";
  }

  private static void kept(Context ctx) {
    boolean now = ctx.pathParam("content").equals(FilesContent.now());
    send(ctx, "/dashboards/parts/", now ? FOR_GOOD : NOT_KEPT);
  }

  /** A file of the program itself, about which the browser asks each time. */
  static void file(Context ctx, String folder) {
    send(ctx, folder, NOT_KEPT);
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
