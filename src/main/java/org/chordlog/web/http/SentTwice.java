package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Stale;
import org.chordlog.store.AnsweredRequests;
import org.chordlog.store.AnsweredRequests.Answer;
import org.chordlog.store.AnsweredRequests.Done;
import org.chordlog.store.DoneAlready;
import org.chordlog.store.RequestKey;
import org.chordlog.store.StoreException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Changes that carry an idempotency key in {@link #KEY}: one that was done is answered again and
 * not done again, also after a restart, since what it wrote carries the key. What was refused had
 * no effect and is tried anew; one that failed is only once it is known that it had none. Any
 * thread.
 */
public final class SentTwice {
  public static final String KEY = "Idempotency-Key";
  private static final Logger LOG = LoggerFactory.getLogger(SentTwice.class);
  private static final String FORM = "[!-~]{8,100}";
  private static final int MOST_BYTES = 1 << 20;
  private static final int REFUSED = 300;

  private final AnsweredRequests stored;
  private final SentRequests sent = new SentRequests(System::nanoTime);

  /** {@code stored}: of the store that the routes write to. */
  public SentTwice(AnsweredRequests stored) {
    this.stored = stored;
  }

  /** The route, done once for each key; one that only reads is given back as it is. */
  public Route around(Route route) {
    return route.changes() ? route.with(handler(route)) : route;
  }

  private Handler handler(Route route) {
    return ctx -> {
      String key = ctx.header(KEY);
      if (key == null) {
        route.handler().handle(ctx);
      } else {
        once(ctx, new RequestKey(checked(key), request(ctx)), route);
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

  private void once(Context ctx, RequestKey key, Route route) throws Exception {
    SentRequests.Before before = sent.begin(key);
    if (before.answer() != null) {
      answer(ctx, before.answer());
      return;
    }
    try {
      Done done = lasts(route) ? stored(key, before.inDoubt()) : null;
      settle(ctx, key, done == null ? first(ctx, key, route) : again(ctx, key, done));
    } catch (BadInput | Stale | Refusal e) {
      sent.forget(key);
      throw e;
    } catch (Exception | Error e) {
      sent.doubt(key);
      throw e;
    }
  }

  /** What may still be written for it is waited for, since it may not be done beside it. */
  private @Nullable Done stored(RequestKey key, boolean inDoubt) {
    return (inDoubt ? stored.findAfterWrites(key.key()) : stored.find(key.key())).orElse(null);
  }

  /** What only answered and wrote nothing may be asked again. */
  private void settle(Context ctx, RequestKey key, @Nullable Answer answer) {
    boolean done = answer != null || key.written();
    if (done && ctx.statusCode() < REFUSED) {
      sent.end(key, answer);
    } else {
      sent.forget(key);
    }
  }

  /** Whoever signs in, or says who is at a shared screen, may do so again. */
  private static boolean lasts(Route route) {
    return route.right() != Right.ANYONE && !route.path().contains("/api/session");
  }

  private @Nullable Answer first(Context ctx, RequestKey key, Route route) throws Exception {
    try {
      boolean unused =
          RequestKey.<Boolean, Exception>during(
              lasts(route) ? key : null,
              () -> {
                route.handler().handle(ctx);
                return true;
              });
    } catch (DoneAlready e) {
      return again(ctx, key, stored.find(key.key()).orElseThrow(() -> e));
    } catch (BadInput | Stale | Refusal e) {
      tryToStore(key, () -> stored.forget(key.key()));
      throw e;
    }
    Answer answer = taken(ctx);
    boolean secret = route.right() == Right.ADMINISTER; // codes and tokens, shown once
    if (answer != null && !secret) {
      tryToStore(key, () -> stored.answer(key.key(), answer));
    }
    return answer;
  }

  /** The request is answered as it is, whether this can be written or not. */
  private static void tryToStore(RequestKey key, Runnable what) {
    if (key.written()) {
      try {
        what.run();
      } catch (StoreException e) {
        LOG.atWarn().setCause(e).log("the answer to a request was not stored");
      }
    }
  }

  private static Answer again(Context ctx, RequestKey key, Done done) {
    SentRequests.requireSame(done.request(), key);
    Answer answer = SentRequests.known(done.answer());
    answer(ctx, answer);
    return answer;
  }

  /** Method, place, who asks and what, as one short text. */
  private static String request(Context ctx) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      String place = ctx.path() + "?" + ctx.queryString();
      String who = ctx.method() + " " + place + " " + ctx.header(Call.BY) + "\n";
      sha.update(who.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest(new Call(ctx).bytes()));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /**
   * Takes the answer for the next time, and gives it on; null where it is too long to be kept, then
   * it goes to whoever asked first only.
   */
  private static @Nullable Answer taken(Context ctx) throws IOException {
    InputStream body = ctx.resultInputStream();
    InputStream all = body == null ? InputStream.nullInputStream() : body;
    byte[] bytes = all.readNBytes(MOST_BYTES + 1);
    if (bytes.length > MOST_BYTES) {
      ctx.result(new SequenceInputStream(new ByteArrayInputStream(bytes), all));
      return null;
    }
    @Nullable String type = ctx.res().getContentType();
    ctx.result(bytes);
    return new Answer(ctx.statusCode(), type == null ? "" : type, bytes);
  }

  private static void answer(Context ctx, Answer before) {
    ctx.status(before.status()).header("Idempotent-Replayed", "true");
    if (!before.mediaType().isEmpty()) {
      ctx.contentType(before.mediaType());
    }
    ctx.result(before.body());
  }
}
