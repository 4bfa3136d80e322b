package org.chordlog.web.http;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;

/** Answers that a browser keeps as a file. */
public final class Downloads {
  private static final int BUFFER_BYTES = 1 << 16;
  private static final String DISPOSITION = "Content-Disposition";

  private Downloads() {}

  /** Writes what is sent, on the thread of the request; whole when it returns. */
  @FunctionalInterface
  public interface Body {
    void write(OutputStream out) throws IOException;
  }

  /** A whole text in UTF-8 under that name of a file. */
  public static void send(Call call, String mediaType, String fileName, String text) {
    name(call, mediaType + "; charset=utf-8", fileName);
    call.ctx().result(text);
  }

  /**
   * What is too large to be made before it is sent. Where it fails, the failure is answered as any
   * other as long as nothing was sent; after that the connection is cut, so that nobody takes a
   * part for the whole.
   */
  public static void stream(Call call, String contentType, String fileName, Body body) {
    name(call, contentType, fileName);
    Begun begun = new Begun(call.ctx().outputStream());
    try {
      OutputStream out = new BufferedOutputStream(begun, BUFFER_BYTES);
      body.write(out);
      out.flush();
    } catch (IOException e) {
      throw failed(call, begun, new UncheckedIOException(e));
    } catch (RuntimeException e) {
      throw failed(call, begun, e);
    }
  }

  private static RuntimeException failed(Call call, Begun begun, RuntimeException e) {
    call.ctx().removeHeader(DISPOSITION);
    return begun.begun() ? new BrokenOff(e) : e;
  }

  /** Sets the headers only; the caller writes the body. {@code fileName} must hold no quotes. */
  public static void name(Call call, String contentType, String fileName) {
    call.ctx()
        .contentType(contentType)
        .header("Cache-Control", "no-store")
        .header(DISPOSITION, "attachment; filename=\"" + fileName + "\"");
  }
}
