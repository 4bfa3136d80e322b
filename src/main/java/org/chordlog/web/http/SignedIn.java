package org.chordlog.web.http;

import io.javalin.http.Context;
import java.util.Map;
import java.util.Optional;
import org.chordlog.account.Caller;
import org.chordlog.account.Entrance;
import org.chordlog.account.Right;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Lets a request pass by who makes it: a person with a session, or a program with a token. */
final class SignedIn {
  private static final String BEARER = "Bearer ";
  private static final Logger LOG = LoggerFactory.getLogger(SignedIn.class);
  private final Entrance entrance;

  SignedIn(Entrance entrance) {
    this.entrance = entrance;
  }

  /** Refused with 401 where nobody is signed in, with 403 where the right is not among theirs. */
  void check(Context ctx, Right needed, boolean changes) {
    Optional<Caller> caller = caller(ctx);
    caller.ifPresent(each -> Call.caller(ctx, each));
    if (needed == Right.ANYONE) {
      return;
    }
    Caller who = caller.orElseThrow(SignedIn::nobody);
    if (changes && !who.session().isEmpty()) {
      requireOwnPage(ctx);
    }
    if (!who.may(needed)) {
      LOG.atWarn()
          .addKeyValue("account", who.name())
          .addKeyValue("address", ctx.ip())
          .addKeyValue("path", ctx.path())
          .addKeyValue("right", needed)
          .log("refused: not among the rights of this account");
      throw new Refusal(403, "Not among your rights", who.refusal(needed));
    }
  }

  private Optional<Caller> caller(Context ctx) {
    String sent = ctx.header("Authorization");
    if (sent != null && sent.startsWith(BEARER)) {
      return entrance.byToken(sent.substring(BEARER.length()).strip(), ctx.ip());
    }
    String cookie = SessionCookie.read(ctx);
    return cookie == null || cookie.isEmpty() ? Optional.empty() : entrance.bySession(cookie);
  }

  /** A cookie travels with whatever a browser sends; this header and this origin do not. */
  private static void requireOwnPage(Context ctx) {
    String site = ctx.header("Sec-Fetch-Site");
    boolean own = site == null || site.equals("same-origin");
    if (!own || ctx.header(Call.BY) == null) {
      throw new Refusal(
          403, "Not from a page of this service", "A change carries the header " + Call.BY + ".");
    }
  }

  private static Refusal nobody() {
    return new Refusal(
        401,
        "Sign in",
        "Nobody is signed in here. Sign in, or send the token of a program: Authorization: Bearer …",
        Map.of("WWW-Authenticate", "Bearer"));
  }
}
