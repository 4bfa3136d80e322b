package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Changes that carry an idempotency key in {@link #KEY}: one that was done is answered again and
 * not done again, as long as the service runs, for an hour and the newest {@value #MOST}. What was
 * refused had no effect and is tried anew. Any thread.
 */
public final class SentTwice {
  public static final String KEY = "Idempotency-Key";
  private static final String FORM = "[!-~]{8,100}";
  private static final int MOST = 1_000;
  private static final long KEPT_NANOS = TimeUnit.HOURS.toNanos(1);
  private static final int MOST_BYTES = 1 << 20;
  private static final int DONE = 300;

  /** What was asked under a key, and what was answered; null while it is being done. */
  private record Sent(String request, @Nullable Answer answer, long atNanos) {}

  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Answer(int status, @Nullable String type, byte[] body) {}

  private final LongSupplier nanos;
  private final Map<String, Sent> sent = new LinkedHashMap<>();

  public SentTwice() {
    this(System::nanoTime);
  }

  SentTwice(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** The route, done once for each key; one that only reads is given back as it is. */
  public Route around(Route route) {
    return route.changes() ? route.with(around(route.handler())) : route;
  }

  private Handler around(Handler handler) {
    return ctx -> {
      String key = ctx.header(KEY);
      if (key == null) {
        handler.handle(ctx);
      } else {
        once(ctx, checked(key), handler);
      }
    };
  }

  private static String checked(String key) {
    if (!key.matches(FORM)) {
      throw new Refusal(
          400, "Bad input", KEY + " must have 8 to 100 characters, no blanks among them.");
    }
    return key;
  }

  private void once(Context ctx, String key, Handler handler) throws Exception {
    String request = request(ctx);
    Answer before = begin(key, request);
    if (before != null) {
      answer(ctx, before);
      return;
    }
    try {
      handler.handle(ctx);
      end(key, request, taken(ctx));
    } catch (Exception | Error e) {
      forget(key);
      throw e;
    }
  }

  /** The answer given before; null where it is to be done now. */
  private synchronized @Nullable Answer begin(String key, String request) {
    dropOld();
    Sent before = sent.get(key);
    if (before == null) {
      sent.put(key, new Sent(request, null, nanos.getAsLong()));
      return null;
    }
    if (!before.request().equals(request)) {
      throw new Refusal(
          422, "Key used already", "This " + KEY + " was sent with another request before.");
    }
    if (before.answer() == null) {
      throw new Refusal(
          409, "Not possible now", "The same request is being done.", Map.of("Retry-After", "1"));
    }
    return before.answer();
  }

  private void dropOld() {
    Iterator<Sent> all = sent.values().iterator();
    while (all.hasNext()) {
      Sent oldest = all.next();
      if (sent.size() < MOST && nanos.getAsLong() - oldest.atNanos() < KEPT_NANOS) {
        return;
      }
      all.remove();
    }
  }

  private synchronized void end(String key, String request, Answer answer) {
    if (answer.status() < DONE) {
      sent.put(key, new Sent(request, answer, nanos.getAsLong()));
    } else {
      sent.remove(key);
    }
  }

  private synchronized void forget(String key) {
    sent.remove(key);
  }

  /** Method, place, who asks and what, as one short text. */
  private static String request(Context ctx) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      String who = ctx.method() + " " + ctx.fullUrl() + " " + ctx.header(Call.BY) + "\n";
      sha.update(who.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest(new Call(ctx).bytes()));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Takes the answer for the next time, and gives it on. */
  private static Answer taken(Context ctx) throws IOException {
    InputStream body = ctx.resultInputStream();
    byte[] bytes = body == null ? new byte[0] : body.readNBytes(MOST_BYTES);
    Answer answer = new Answer(ctx.statusCode(), ctx.res().getContentType(), bytes);
    ctx.result(bytes);
    return answer;
  }

  private static void answer(Context ctx, Answer before) {
    ctx.status(before.status()).header("Idempotent-Replayed", "true");
    if (before.type() != null) {
      ctx.contentType(before.type());
    }
    ctx.result(before.body());
  }
}
