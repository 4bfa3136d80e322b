package org.chordlog.web.http;

import java.util.Map;
import org.chordlog.measure.Sentence;

/** A request that is answered with a problem document and that status. */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final int status;
  private final String title;
  private final transient Sentence detail;
  private final transient Map<String, String> headers;

  public Refusal(int status, String title, String detail) {
    this(status, title, detail, Map.of());
  }

  public Refusal(int status, String title, String detail, Map<String, String> headers) {
    this(status, title, Sentence.plain(detail), headers);
  }

  private Refusal(int status, String title, Sentence detail, Map<String, String> headers) {
    super(detail.toString(), null, false, false);
    this.status = status;
    this.title = title;
    this.detail = detail;
    this.headers = headers;
  }

  public static Refusal notFound(String what, Object id) {
    return new Refusal(404, "Not found", "There is no " + what + " " + id + ".");
  }

  public static Refusal conflict(String detail) {
    return conflict(Sentence.plain(detail));
  }

  public static Refusal conflict(Sentence detail) {
    return new Refusal(409, "Not possible now", detail, Map.of());
  }

  Sentence detail() {
    return detail;
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
