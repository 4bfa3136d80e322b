package org.chordlog.web.http;

import io.javalin.http.Context;
import org.jspecify.annotations.Nullable;

/**
 * The cookie of a session. By https its name begins with __Host-, so that no other host and no
 * unencrypted page can set it (RFC 6265bis, 4.1.3.2); it is never sent by a page of another site
 * and no script can read it.
 */
public final class SessionCookie {
  private static final String NAME = "chordlog";
  private static final String SECURE_NAME = "__Host-" + NAME;
  private static final long YEAR_SECONDS = 366L * 24 * 3_600;

  private SessionCookie() {}

  static @Nullable String read(Context ctx) {
    return ctx.cookie(secure(ctx) ? SECURE_NAME : NAME);
  }

  /** {@code lasting}: also when the browser is closed, as for a screen that people share. */
  public static void set(Context ctx, String secret, boolean lasting) {
    put(ctx, secret, lasting ? "; Max-Age=" + YEAR_SECONDS : "");
  }

  /** Removes it from the browser, with what the browser has cached of this service. */
  public static void clear(Context ctx) {
    put(ctx, "", "; Max-Age=0");
    ctx.header("Clear-Site-Data", "\"cache\"");
  }

  private static void put(Context ctx, String value, String more) {
    String name = secure(ctx) ? SECURE_NAME + "=" : NAME + "=";
    String rules = "; Path=/; HttpOnly; SameSite=Strict" + (secure(ctx) ? "; Secure" : "");
    ctx.header("Set-Cookie", name + value + rules + more);
  }

  static boolean secure(Context ctx) {
    return ctx.req().isSecure();
  }
}
