package org.chordlog.web.http;

import java.util.List;
import java.util.Map;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** A request that is answered with a problem document and that status. */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final String type;
  private final int status;
  private final String title;
  private final transient Sentence detail;
  private final transient Map<String, String> headers;
  private final transient @Nullable Object present;
  private final transient List<Fault> faults;

  public Refusal(int status, String title, String detail) {
    this(status, title, detail, Map.of());
  }

  public Refusal(int status, String title, String detail, Map<String, String> headers) {
    this(Problem.NO_KIND, status, title, Sentence.plain(detail), headers, null, List.of());
  }

  private Refusal(
      String type,
      int status,
      String title,
      Sentence detail,
      Map<String, String> headers,
      @Nullable Object present,
      List<Fault> faults) {
    super(detail.toString(), null, false, false);
    this.type = type;
    this.status = status;
    this.title = title;
    this.detail = detail;
    this.headers = headers;
    this.present = present;
    this.faults = List.copyOf(faults);
  }

  /** 404: "There is no {@code what} {@code id}." */
  public static Refusal notFound(String what, Object id) {
    return new Refusal(404, "Not found", "There is no " + what + " " + id + ".");
  }

  /** 409: what was asked is right, but not possible as things are; the detail says why. */
  public static Refusal conflict(String detail) {
    return conflict(Sentence.plain(detail));
  }

  public static Refusal conflict(Sentence detail) {
    return new Refusal(Problem.NO_KIND, 409, "Not possible now", detail, Map.of(), null, List.of());
  }

  /** 409: another one has the name, which may be meant so. */
  public static Refusal sameName(Sentence detail) {
    return new Refusal(Problem.SAME_NAME, 409, "The same name", detail, Map.of(), null, List.of());
  }

  /** 400: what may be a slip of the pen, and may be meant so; {@code faults} name the fields. */
  public static Refusal doubtful(Sentence detail, List<Fault> faults) {
    return new Refusal(Problem.DOUBTFUL, 400, "Bad input", detail, Map.of(), null, faults);
  }

  /** What was to be changed is no longer as the caller knows it; {@code present} is how it is. */
  public static Refusal changedMeanwhile(String detail, Object present) {
    return new Refusal(
        Problem.NO_KIND,
        412,
        "Changed meanwhile",
        Sentence.plain(detail),
        Map.of(),
        present,
        List.of());
  }

  /** 503: a record that can't be read; to ask for it again does not help. */
  public static Refusal damagedRecord(String detail) {
    return new Refusal(
        Problem.DAMAGED_RECORD,
        503,
        "Damaged record",
        Sentence.plain(detail),
        Map.of(),
        null,
        List.of());
  }

  List<Fault> faults() {
    return faults;
  }

  @Nullable Object present() {
    return present;
  }

  Sentence detail() {
    return detail;
  }

  String type() {
    return type;
  }

  int status() {
    return status;
  }

  String title() {
    return title;
  }

  Map<String, String> headers() {
    return headers;
  }
}
