package org.chordlog.web.http;

/** Answers that a browser keeps as a file. */
public final class Downloads {
  private Downloads() {}

  /** A whole text in UTF-8 under that name of a file. */
  public static void send(Call call, String mediaType, String fileName, String text) {
    name(call, mediaType + "; charset=utf-8", fileName);
    call.ctx().result(text);
  }

  /** Sets the headers only; the caller writes the body. {@code fileName} must hold no quotes. */
  public static void name(Call call, String contentType, String fileName) {
    call.ctx()
        .contentType(contentType)
        .header("Cache-Control", "no-store")
        .header("Content-Disposition", "attachment; filename=\"" + fileName + "\"");
  }
}
