package org.chordlog.simulator;

import java.nio.charset.StandardCharsets;
import java.util.function.LongSupplier;

/** Sends its value for each request text that comes in. */
final class PolledDevice implements Listener {
  private final FrameWriter writer;
  private final String request;
  private String pending = "";

  PolledDevice(FrameWriter writer, String request) {
    this.writer = writer;
    this.request = request;
  }

  @Override
  public byte[] answer(byte[] received, LongSupplier valueNm) {
    pending += new String(received, StandardCharsets.ISO_8859_1);
    int at = pending.lastIndexOf(request);
    if (at < 0) {
      pending = pending.substring(Math.max(0, pending.length() - request.length()));
      return new byte[0];
    }
    pending = pending.substring(at + request.length());
    return writer.frame(valueNm.getAsLong(), false);
  }
}
