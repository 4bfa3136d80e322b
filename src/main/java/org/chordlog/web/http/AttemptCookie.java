package org.chordlog.web.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Base64;

/**
 * Remembers, for ten minutes, an attempt to sign in elsewhere and the page that it began at. It has
 * to come back with a link from the provider's page, so it is not as strict as {@link
 * SessionCookie}; with it alone nothing can be done.
 */
public final class AttemptCookie {
  private static final String NAME = "chordlog-attempt";
  private static final int SECONDS = 600;
  private static final int LONGEST = 1_000;

  private AttemptCookie() {}

  /** What was set: the attempt's secret and the page; both empty where nothing was. */
  public record Remembered(String secret, String page) {}

  /** Sent with the answer; a page whose path is too long is replaced by the first page. */
  public static void set(Context ctx, Remembered attempt) {
    String page = attempt.page().length() > LONGEST ? "/" : attempt.page();
    byte[] bytes = page.getBytes(StandardCharsets.UTF_8);
    String value =
        attempt.secret() + "." + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    put(ctx, value, SECONDS);
  }

  public static void clear(Context ctx) {
    put(ctx, "", 0);
  }

  private static void put(Context ctx, String value, int seconds) {
    String rules =
        "; Path=/; HttpOnly; SameSite=Lax" + (SessionCookie.secure(ctx) ? "; Secure" : "");
    ctx.res().addHeader("Set-Cookie", name(ctx) + "=" + value + rules + "; Max-Age=" + seconds);
  }

  private static String name(Context ctx) {
    return SessionCookie.secure(ctx) ? "__Host-" + NAME : NAME;
  }

  /** Never fails: a cookie that is missing or damaged is an empty secret and the first page. */
  public static Remembered read(Context ctx) {
    String value = ctx.cookie(name(ctx));
    int dot = value == null ? -1 : value.indexOf('.');
    if (value == null || dot < 0) {
      return new Remembered("", "/");
    }
    try {
      byte[] page = Base64.getUrlDecoder().decode(value.substring(dot + 1));
      return new Remembered(value.substring(0, dot), new String(page, StandardCharsets.UTF_8));
    } catch (IllegalArgumentException e) {
      return new Remembered("", "/");
    }
  }
}
