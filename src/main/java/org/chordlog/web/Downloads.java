package org.chordlog.web;

/** Answers that a browser keeps as a file. */
final class Downloads {
  private Downloads() {}

  static void send(Call call, String mediaType, String fileName, String text) {
    name(call, mediaType + "; charset=utf-8", fileName);
    call.ctx().result(text);
  }

  static void name(Call call, String contentType, String fileName) {
    call.ctx()
        .contentType(contentType)
        .header("Content-Disposition", "attachment; filename=\"" + fileName + "\"");
  }
}
