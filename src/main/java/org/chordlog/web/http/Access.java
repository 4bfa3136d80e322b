package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.chordlog.account.Entrance;
import org.chordlog.account.Right;
import org.chordlog.account.WrongInARow;
import org.jspecify.annotations.Nullable;

/**
 * Who may do what; the default is to refuse. A form of another site can neither send the header
 * {@link Call#BY} nor name this origin, and a name that leads a browser here by a changed DNS entry
 * is not one of the {@link HostNames} of the service.
 */
public final class Access {
  private final WebSettings settings;
  private final HostNames names;
  private final @Nullable SignedIn signedIn;
  private final WrongInARow wrongKeys =
      new WrongInARow(
          new WrongInARow.Bounds(10, 60, 1_000), "a request had a wrong key", System::nanoTime);

  /**
   * {@code certified}: names that the service's certificate is made out to, at this moment; {@code
   * entrance} counts where people sign in.
   */
  public Access(WebSettings settings, Supplier<Set<String>> certified, Entrance entrance) {
    this.settings = settings;
    this.signedIn = settings.reach().accounts() ? new SignedIn(entrance) : null;
    this.names = new HostNames(settings, certified);
  }

  /**
   * Before every handler, on the thread of the request; throws {@link Refusal} where the request
   * may not pass, and notes who asks for {@link Call#caller}.
   */
  public void check(Context ctx) {
    checkHost(ctx);
    checkLength(ctx);
    Right needed = RouteRight.of(ctx).orElseThrow(() -> notPossible(ctx));
    boolean changes =
        !ctx.method().equals(HandlerType.GET) && !ctx.method().equals(HandlerType.HEAD);
    if (changes) {
      checkOrigin(ctx);
    }
    if (signedIn != null) {
      signedIn.check(ctx, needed, changes);
    } else if (changes) {
      new Call(ctx).by();
      checkToken(ctx);
    }
  }

  private static Refusal notPossible(Context ctx) {
    return new Refusal(
        405,
        "Method not allowed",
        ctx.method() + " is not possible at " + ctx.path() + ".",
        Map.of("Allow", "GET"));
  }

  private void checkHost(Context ctx) {
    if (!names.has(ctx.host())) {
      throw new Refusal(421, "Misdirected request", names.refusal());
    }
  }

  /** Refused by what the header announces: a slow sender is not waited for. */
  private void checkLength(Context ctx) {
    long most = settings.maxRequestBytes();
    long announced = ctx.req().getContentLengthLong();
    if (announced > most) {
      TooLarge.passOver(ctx.req(), announced);
      throw new Refusal(
          413,
          "Content too large",
          "The request is larger than this service accepts: at most " + most + " bytes.");
    }
  }

  private static void checkOrigin(Context ctx) {
    String origin = ctx.header("Origin");
    if (origin != null && !HostNames.same(origin, ctx.host())) {
      throw new Refusal(403, "Other origin", "A page of another origin may not change anything.");
    }
  }

  private void checkToken(Context ctx) {
    if (settings.token().isEmpty()) {
      return;
    }
    refuseWaiting(wrongKeys.wait(ctx.ip()));
    String sent = ctx.header("Authorization");
    String wanted = "Bearer " + settings.token();
    if (sent == null || !MessageDigest.isEqual(utf8(sent), utf8(wanted))) {
      if (sent != null) {
        wrongKeys.wrong(ctx.ip());
      }
      throw new Refusal(
          401,
          "Token needed",
          "A request that changes something carries the token of this service: Authorization: Bearer …",
          Map.of("WWW-Authenticate", "Bearer"));
    }
    wrongKeys.right(ctx.ip());
  }

  private static void refuseWaiting(long seconds) {
    if (seconds > 0) {
      throw new Refusal(
          429,
          "Too many wrong tokens",
          "This address sent too many wrong tokens. Try again in " + seconds + " s.",
          Map.of("Retry-After", String.valueOf(seconds)));
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
