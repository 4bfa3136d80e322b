package org.chordlog.decode;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** What to send to an indicator that answers on request, one character a byte, and how often. */
public record Polling(String request, int intervalMs) {
  public Polling {
    request = Bytes.checked("request", request, 64);
    if (request.isEmpty()) {
      throw new BadInput("request", "''", "is empty", "1 to 64 bytes");
    }
    Check.within("intervalMs", intervalMs, 1, 60_000);
  }

  public byte[] requestBytes() {
    return Bytes.of(request);
  }
}
