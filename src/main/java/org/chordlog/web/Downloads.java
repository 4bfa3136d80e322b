package org.chordlog.web;

/** Answers that a browser keeps as a file. */
final class Downloads {
  private Downloads() {}

  static void send(Call call, String mediaType, String fileName, String text) {
    call.ctx()
        .contentType(mediaType + "; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"" + fileName + "\"")
        .result(text);
  }
}
