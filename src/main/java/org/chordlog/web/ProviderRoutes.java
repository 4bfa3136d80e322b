package org.chordlog.web;

import io.javalin.http.Context;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.chordlog.account.Elsewhere;
import org.chordlog.account.Entrance;
import org.chordlog.account.WrongSecret;
import org.chordlog.web.http.AttemptCookie;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.RequestLimiter;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.SessionCookie;
import org.chordlog.web.openid.Attempt;
import org.chordlog.web.openid.NotProved;
import org.chordlog.web.openid.Provider;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Signing in at a provider of OpenID Connect. Browsers are led by these routes; what goes wrong
 * leads back to the page for signing in, with the reason as a word that it knows.
 */
final class ProviderRoutes {
  private static final String HERE = "/api/session/provider";
  private static final String BACK = HERE + "/answer";
  private static final String REFUSED = "/sign-in.html?refused=";
  private static final Logger LOG = LoggerFactory.getLogger(ProviderRoutes.class);
  private final @Nullable Provider provider;
  private final Entrance entrance;

  ProviderRoutes(@Nullable Provider provider, Entrance entrance) {
    this.provider = provider;
    this.entrance = entrance;
  }

  List<Route> routes() {
    return RequestLimiter.ofProvider()
        .around(
            List.of(
                Route.open(HERE, "Leads to the provider at which people sign in")
                    .query("to", "string", "page of this service to come back to")
                    .leads(this::go),
                Route.open(BACK, "Where the provider leads back to: signs in")
                    .query("code", "string", "of the provider")
                    .query("state", "string", "of the attempt")
                    .leads(this::back)));
  }

  private void go(Call call) {
    if (provider == null) {
      call.ctx().redirect(REFUSED + "none");
      return;
    }
    Attempt attempt = Attempt.begun();
    try {
      URI there = provider.signIn(attempt, back(call.ctx()));
      String page = page(call.text("to", "/"));
      AttemptCookie.set(call.ctx(), new AttemptCookie.Remembered(attempt.secret(), page));
      call.ctx().redirect(there.toString());
    } catch (NotProved e) {
      refused(call.ctx(), e);
    }
  }

  /**
   * The service as this browser calls it; its name was checked, and the provider knows the list.
   */
  private static URI back(Context ctx) {
    return URI.create((ctx.req().isSecure() ? "https://" : "http://") + ctx.host() + BACK);
  }

  /** Only one of this service. */
  private static String page(String to) {
    return to.matches("/([^/\\\\].*)?") ? to : "/";
  }

  private void back(Call call) {
    Context ctx = call.ctx();
    AttemptCookie.Remembered remembered = AttemptCookie.read(ctx);
    Optional<Attempt> attempt = Attempt.of(remembered.secret());
    if (provider == null || attempt.isEmpty()) {
      AttemptCookie.clear(ctx);
      ctx.redirect(REFUSED + (provider == null ? "none" : "stale"));
      return;
    }
    try {
      begin(ctx, provider, provider.proved(attempt.get(), back(ctx), ctx.queryParamMap()));
      ctx.redirect(page(remembered.page()));
    } catch (NotProved e) {
      refused(ctx, e);
    } catch (WrongSecret e) {
      refused(ctx, "disabled", String.valueOf(e.getMessage()));
    }
    AttemptCookie.clear(ctx);
  }

  private void begin(Context ctx, Provider at, Provider.Claims who) throws NotProved {
    Set<String> roles = at.settings().roles(who.groups());
    if (roles.isEmpty()) {
      throw NotProved.withoutRole(who);
    }
    Elsewhere proved = new Elsewhere(who.issuer(), who.subject(), who.name(), roles);
    SessionCookie.set(ctx, entrance.signIn(proved, ctx.ip()), false);
  }

  private static void refused(Context ctx, NotProved e) {
    refused(ctx, e.reason().name().toLowerCase(Locale.ROOT), String.valueOf(e.getMessage()));
  }

  private static void refused(Context ctx, String reason, String said) {
    LOG.atWarn()
        .addKeyValue("address", ctx.ip())
        .addKeyValue("reason", reason)
        .addKeyValue("said", said)
        .log("not signed in by the provider");
    ctx.redirect(REFUSED + reason);
  }
}
