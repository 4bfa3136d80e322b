package org.chordlog.web.http;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.account.Caller;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.NumberText;
import org.jspecify.annotations.Nullable;

/** One request: its identifiers, its query and its body, each refused by name when bad. */
public record Call(Context ctx) {
  public static final String BY = "Chordlog-By";
  public static final String UNIT = "unit";
  private static final String CALLER = "chordlog.caller";
  private static final int LONGEST_NAME = 80;

  /** A part of the path, percent-decoded. */
  public String name(String parameter) {
    return ctx.pathParam(parameter);
  }

  /**
   * A part of the path that is an id; throws {@link BadInput} where it is not a whole number from
   * 1.
   */
  public long id(String parameter) {
    return whole(parameter, ctx.pathParam(parameter), 1, Long.MAX_VALUE);
  }

  /**
   * A whole number of the query; throws {@link BadInput} where it is none or out of those bounds.
   */
  public long query(String name, long otherwise, long least, long most) {
    String text = ctx.queryParam(name);
    return text == null ? otherwise : whole(name, text, least, most);
  }

  /** The id a page starts after, or null for the first page. */
  public @Nullable Long cursor(String name) {
    String text = ctx.queryParam(name);
    return text == null ? null : (Long) whole(name, text, 0, Long.MAX_VALUE);
  }

  /** A time, without an offset in UTC; null when it is not given. */
  public @Nullable Long micros(String name) {
    String text = ctx.queryParam(name);
    return text == null ? null : (Long) Times.read(name, text);
  }

  /** As {@link #micros} of a last moment: a day alone is meant to its end. */
  public @Nullable Long lastMicros(String name) {
    String text = ctx.queryParam(name);
    return text == null ? null : (Long) Times.readLast(name, text);
  }

  /** A number of the query; throws {@link BadInput} where it is missing or none. */
  public double number(String name) {
    return optionalNumber(name).orElseThrow(() -> new BadInput(name, "", "is missing", "a number"));
  }

  /**
   * A number of the query, or empty where it is blank or not given; throws {@link BadInput}
   * otherwise, also for one with a comma or too large for a double.
   */
  public Optional<Double> optionalNumber(String name) {
    String text = ctx.queryParam(name);
    if (text == null || text.isBlank()) {
      return Optional.empty();
    }
    Double number = text.indexOf(',') < 0 ? NumberText.read(text) : null;
    if (number == null) {
      throw new BadInput(name, text, "is not a number", "a number with a decimal point");
    }
    return Optional.of(number);
  }

  /** The unit that sentences of the answer say lengths in. */
  public Lengths lengths() {
    return switch (text(UNIT, "mm").toLowerCase(Locale.ROOT)) {
      case "mm" -> Lengths.MM;
      case "inch" -> Lengths.INCH;
      default -> throw new BadInput(UNIT, text(UNIT, ""), "is not known", "mm, inch");
    };
  }

  /** As it was sent: blank stays blank, and nothing bounds its length. */
  public Optional<String> text(String name) {
    return Optional.ofNullable(ctx.queryParam(name));
  }

  public String text(String name, String otherwise) {
    String text = ctx.queryParam(name);
    return text == null ? otherwise : text;
  }

  /**
   * False where it is not given, true where it is given without a value; throws {@link BadInput}
   * for anything but true and false.
   */
  public boolean flag(String name) {
    return switch (text(name, "false")) {
      case "true", "" -> true;
      case "false" -> false;
      default -> throw new BadInput(name, text(name, ""), "can't be read", "true, false");
    };
  }

  /**
   * A constant of that type, in any case and with - for _; empty where it is blank or not given.
   * Throws {@link BadInput} with the names that there are.
   */
  public <E extends Enum<E>> Optional<E> choice(String name, Class<E> type) {
    String text = ctx.queryParam(name);
    return text == null || text.isBlank() ? Optional.empty() : Optional.of(one(name, text, type));
  }

  /** A part of the path that is a constant of that type, read as {@link #choice} does. */
  public <E extends Enum<E>> E choiceInPath(String name, Class<E> type) {
    return one(name, ctx.pathParam(name), type);
  }

  /**
   * The body as that record. Throws {@link Refusal} 415 where it is not said to be JSON, 400 where
   * it does not arrive whole, and {@link BadInput} that names the field where it does not fit.
   */
  public <T> T body(Class<T> type) {
    String sent = ctx.contentType();
    if (sent == null || !sent.toLowerCase(Locale.ROOT).matches("application/json(\\s*;.*)?")) {
      throw new Refusal(415, "Unsupported media type", "The body must be application/json.");
    }
    return Json.read(bytes(), type);
  }

  /** A body that ends too early, comes too slowly or is cut wrongly is the caller's fault. */
  byte[] bytes() {
    try {
      return ctx.bodyAsBytes();
    } catch (HttpResponseException e) {
      throw e;
    } catch (Exception e) {
      throw new Refusal(400, "Bad request", "The body did not come whole.");
    }
  }

  /** Sets the ETag of a snapshot; ends the request when the caller has this snapshot already. */
  public void unlessKnown(String tag) {
    SnapshotTag.unlessKnown(ctx, tag);
  }

  /**
   * Whether the caller means this version of what it changes: by If-Match (RFC 9110, 13.1.1), with
   * the version or with an ETag that begins with it. True where it names none.
   */
  public boolean means(String version) {
    String wanted = ctx.header("If-Match");
    return wanted == null
        || Arrays.stream(wanted.split(",", -1))
            .map(each -> each.strip().replaceFirst("^W/", "").replace("\"", ""))
            .anyMatch(
                tag -> tag.equals("*") || tag.equals(version) || tag.startsWith(version + "."));
  }

  /** Who asks, where people sign in; else null. */
  public @Nullable Caller caller() {
    return ctx.attribute(CALLER);
  }

  static void caller(Context ctx, Caller caller) {
    ctx.attribute(CALLER, caller);
  }

  /** The session of who asks; empty for none. */
  public String session() {
    Caller caller = caller();
    return caller == null ? "" : caller.session();
  }

  /** Who acts, for the record of changes: who is signed in, else who the caller says. */
  public String by() {
    Caller caller = caller();
    if (caller != null) {
      return caller.name().isEmpty() ? caller.screen() : caller.name();
    }
    String by = by(ctx);
    if (by == null || by.isBlank() || by.length() > LONGEST_NAME || !Texts.seen(by, false)) {
      throw new Refusal(
          403,
          "No name given",
          "A request that changes something names who asks in the header "
              + BY
              + ", percent-encoded, 1 to 80 characters, none of them a control character.");
    }
    return by.strip();
  }

  private static @Nullable String by(Context ctx) {
    String sent = ctx.header(BY);
    try {
      return sent == null ? null : URLDecoder.decode(sent, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  static <E extends Enum<E>> E one(String field, String text, Class<E> type) {
    String wanted = text.replace('-', '_').toUpperCase(Locale.ROOT);
    return Arrays.stream(type.getEnumConstants())
        .filter(each -> each.name().equals(wanted))
        .findFirst()
        .orElseThrow(() -> new BadInput(field, text, "is not known", names(type)));
  }

  /** The names of the constants as requests write them, for the allowed values of a refusal. */
  public static <E extends Enum<E>> String names(Class<E> type) {
    return Arrays.stream(type.getEnumConstants())
        .map(each -> each.name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .collect(Collectors.joining(", "));
  }

  private static long whole(String field, String text, long least, long most) {
    String allowed = "a whole number from " + least + " to " + most;
    try {
      long value = Long.parseLong(text);
      if (value < least || value > most) {
        throw new BadInput(field, text, "is out of range", allowed);
      }
      return value;
    } catch (NumberFormatException e) {
      throw new BadInput(field, text, "is not a whole number", allowed);
    }
  }
}
