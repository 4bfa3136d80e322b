package org.chordlog.web.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.NoAnswer;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Stale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Turns whatever goes wrong in a request into a problem document; never a stack trace. */
public final class Problems {
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

  private Problems() {}

  /** Once, before the server starts; what nobody foresaw is logged and answered with 500. */
  public static void register(RoutesConfig routes) {
    routes.exception(BadInput.class, (e, ctx) -> badInput(ctx, e));
    routes.exception(Stale.class, (e, ctx) -> stale(ctx, e));
    routes.exception(NoAnswer.class, (e, ctx) -> noAnswer(ctx, e));
    routes.exception(NotModified.class, (e, ctx) -> ctx.status(304));
    routes.exception(Refusal.class, (e, ctx) -> refusal(ctx, e));
    routes.exception(HttpResponseException.class, (e, ctx) -> http(ctx, e));
    routes.exception(BrokenOff.class, (e, ctx) -> brokenOff(ctx, e));
    routes.exception(Exception.class, (e, ctx) -> unexpected(ctx, e));
  }

  private static void badInput(Context ctx, BadInput e) {
    answer(ctx, 400, "Bad input", e.said(), e.faults());
  }

  private static void stale(Context ctx, Stale e) {
    answer(ctx, 409, title(409), Sentence.plain(String.valueOf(e.getMessage())), List.of());
  }

  private static void noAnswer(Context ctx, NoAnswer e) {
    Sentence said = Sentence.plain(Capital.of(String.valueOf(e.getMessage())) + ".");
    answer(ctx, 503, "No answer yet", said, List.of());
  }

  /** Answers as if that had been thrown. */
  public static void refusal(Context ctx, Refusal e) {
    e.headers().forEach(ctx::header);
    answer(ctx, new Problem(e.type(), e.title(), e.status(), e.detail(), e.faults(), e.present()));
  }

  private static void http(Context ctx, HttpResponseException e) {
    String available = e.getDetails().get("availableMethods");
    if (available != null) {
      ctx.header("Allow", available);
    }
    Sentence said = Sentence.plain(sentence(e.getStatus(), ctx));
    answer(ctx, e.getStatus(), title(e.getStatus()), said, List.of());
  }

  private static void unexpected(Context ctx, Exception e) {
    String reference = UUID.randomUUID().toString().substring(0, 8);
    LOG.atError()
        .addKeyValue("reference", reference)
        .addKeyValue("method", ctx.method())
        .addKeyValue("path", ctx.path())
        .setCause(e)
        .log("request failed");
    Sentence said = Sentence.of("The log names the cause under %s.", reference);
    answer(ctx, 500, title(500), said, List.of());
  }

  /** Without its end the answer is seen to be broken; words after it would look like a part. */
  private static void brokenOff(Context ctx, BrokenOff e) {
    LOG.atWarn()
        .addKeyValue("path", ctx.path())
        .setCause(e.getCause())
        .log("a download broke off; its connection is cut");
    Connections.cut(ctx);
  }

  private static void answer(
      Context ctx, int status, String title, Sentence detail, List<Fault> faults) {
    answer(ctx, new Problem(Problem.NO_KIND, title, status, detail, faults, null));
  }

  private static void answer(Context ctx, Problem problem) {
    ctx.status(problem.status());
    if (ProblemPage.wanted(ctx)) {
      ctx.html(ProblemPage.of(problem, ctx.path()));
    } else {
      ctx.contentType(Problem.MEDIA_TYPE).result(Json.bytes(problem, lengths(ctx)));
    }
  }

  /** A unit that is not known is refused in mm. */
  private static Lengths lengths(Context ctx) {
    return "inch".equals(ctx.queryParam(Call.UNIT)) ? Lengths.INCH : Lengths.MM;
  }

  private static String title(int status) {
    String name = io.javalin.http.HttpStatus.forStatus(status).getMessage();
    return name.substring(0, 1) + name.substring(1).toLowerCase(Locale.ROOT);
  }

  private static String sentence(int status, Context ctx) {
    return switch (status) {
      case 404 -> "There is nothing at " + ctx.path() + ".";
      case 405 -> ctx.method() + " is not possible at " + ctx.path() + ".";
      case 413 -> "The request is larger than this service accepts.";
      default -> title(status) + ".";
    };
  }
}
