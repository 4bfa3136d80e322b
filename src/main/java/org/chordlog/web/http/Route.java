package org.chordlog.web.http;

import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.measure.Lengths;
import org.jspecify.annotations.Nullable;

/**
 * One route: the same row registers the handler and writes the API document, so that they can't
 * differ. {@code body} and {@code answer} are records, or null for none.
 */
public record Route(
    HandlerType method,
    String path,
    Right right,
    String summary,
    List<Parameter> query,
    @Nullable Class<?> body,
    int status,
    @Nullable Class<?> answer,
    Shape shape,
    String mediaType,
    Handler handler) {

  public static final String UNIT_ASKED =
      "unit that sentences say lengths in: mm (if left out), inch; numbers stay in mm";

  /** How the answer is wrapped. */
  enum Shape {
    ONE,
    LIST,
    PAGE
  }

  /** A query parameter, with what is allowed. */
  record Parameter(String name, String type, String description) {}

  /** Gives what is answered. */
  public interface Action {
    Object answer(Call call);
  }

  /** Does something and answers nothing. */
  public interface Command {
    void run(Call call);
  }

  /** Whether it changes something. */
  public boolean changes() {
    return !method.equals(HandlerType.GET);
  }

  /** Whether HEAD is answered as GET is, without the body: not where that would not end. */
  public boolean hasHead() {
    return method.equals(HandlerType.GET)
        && status == 200
        && !mediaType.equals("text/event-stream");
  }

  /** The same below that path, answered by {@code other}. */
  public Route below(String prefix, Handler other) {
    return new Route(
        method,
        prefix + path,
        right,
        summary,
        query,
        body,
        status,
        answer,
        shape,
        mediaType,
        other);
  }

  Route with(Handler other) {
    return new Route(
        method, path, right, summary, query, body, status, answer, shape, mediaType, other);
  }

  /** Reads, for everybody who may look; answers HEAD too, unless it is a stream of events. */
  public static Draft get(String path, String summary) {
    return new Draft(HandlerType.GET, path, Right.LOOK, summary);
  }

  /** To be read by everyone who can reach the service: it says nothing about the shop. */
  public static Draft open(String path, String summary) {
    return new Draft(HandlerType.GET, path, Right.ANYONE, summary);
  }

  /** Changes something. Access has demanded origin, name and right before the handler runs. */
  public static Draft post(Right right, String path, String summary) {
    return new Draft(HandlerType.POST, path, right, summary);
  }

  /** As {@link #post}, and sending it twice does no more than once. */
  public static Draft put(Right right, String path, String summary) {
    return new Draft(HandlerType.PUT, path, right, summary);
  }

  /** As {@link #put}; it removes. */
  public static Draft delete(Right right, String path, String summary) {
    return new Draft(HandlerType.DELETE, path, right, summary);
  }

  /** A route being written. */
  public static final class Draft {
    private final HandlerType method;
    private final String path;
    private Right right;
    private final String summary;
    private final List<Parameter> query = new ArrayList<>();
    private @Nullable Class<?> body;

    private Draft(HandlerType method, String path, Right right, String summary) {
      this.method = method;
      this.path = path;
      this.right = right;
      this.summary = summary;
    }

    /** A parameter of the query, for the document alone: the handler reads and bounds it. */
    public Draft query(String name, String type, String description) {
      query.add(new Parameter(name, type, description));
      return this;
    }

    /** Another right than the usual one. */
    public Draft needs(Right other) {
      right = other;
      return this;
    }

    /** The record that the handler reads as its body, for the document alone. */
    public Draft body(Class<?> type) {
      body = type;
      return this;
    }

    /** Answered with 200 and what the action returns, which has to be of that type. */
    public Route answers(Class<?> type, Action action) {
      return json(200, type, Shape.ONE, action);
    }

    /** Answered with 201 and what was made. */
    public Route creates(Class<?> type, Action action) {
      return json(201, type, Shape.ONE, action);
    }

    /** Answered with 202: it is done elsewhere, later. */
    public Route accepts(Class<?> type, Action action) {
      return json(202, type, Shape.ONE, action);
    }

    /** Answered with 200 and a JSON array whose items are of that type. */
    public Route answersList(Class<?> type, Action action) {
      return json(200, type, Shape.LIST, action);
    }

    /** Answered with 200 and a page: items of that type and where the next page starts. */
    public Route answersPage(Class<?> type, Action action) {
      return json(200, type, Shape.PAGE, action);
    }

    /** Answered with 204 once the command has returned. */
    public Route does(Command command) {
      return route(
          204,
          null,
          Shape.ONE,
          "",
          ctx -> {
            command.run(new Call(ctx));
            ctx.status(204);
          });
    }

    /** The handler leads the browser elsewhere. */
    public Route leads(Command command) {
      return route(302, null, Shape.ONE, "", ctx -> command.run(new Call(ctx)));
    }

    /** The handler writes the answer itself, in that media type. */
    public Route sends(String mediaType, Command command) {
      return route(200, null, Shape.ONE, mediaType, ctx -> command.run(new Call(ctx)));
    }

    private Route json(int status, Class<?> type, Shape shape, Action action) {
      return route(
          status,
          type,
          shape,
          "application/json",
          ctx -> {
            ctx.status(status);
            Call call = new Call(ctx);
            Lengths lengths = call.lengths();
            Object answer = action.answer(call);
            ctx.contentType("application/json").result(Json.bytes(answer, lengths));
          });
    }

    private Route route(
        int status, @Nullable Class<?> answer, Shape shape, String mediaType, Handler handler) {
      return new Route(
          method,
          path,
          right,
          summary,
          List.copyOf(query),
          body,
          status,
          answer,
          shape,
          mediaType,
          method.equals(HandlerType.GET) || right == Right.ANYONE ? handler : named(handler));
    }

    private static Handler named(Handler handler) {
      return ctx -> {
        new Call(ctx).by();
        handler.handle(ctx);
      };
    }
  }
}
