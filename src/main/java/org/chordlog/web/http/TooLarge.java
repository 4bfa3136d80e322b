package org.chordlog.web.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * The body of a request that is refused for its size. A connection that is closed while its body
 * comes is reset, and a sender that is still sending never reads why.
 */
final class TooLarge {
  private static final long MOST_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
  private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(5);
  private static final int MOST_BYTES = 1 << 20;

  private TooLarge() {}

  /** Reads and forgets what comes within a quarter of a second, up to a megabyte. */
  static void passOver(HttpServletRequest request, long announced) {
    try {
      passOver(request.getInputStream(), Math.min(announced, MOST_BYTES));
    } catch (IOException gone) {
      // a client that has disconnected reads no answer either
    }
  }

  private static void passOver(InputStream body, long most) throws IOException {
    byte[] chunk = new byte[16_384];
    long end = System.nanoTime() + MOST_NANOS;
    long left = most;
    while (left > 0 && System.nanoTime() < end) {
      int there = Math.min(body.available(), chunk.length);
      if (there == 0) {
        LockSupport.parkNanos(LOOK_NANOS);
      } else {
        left -= Math.max(1, body.read(chunk, 0, there));
      }
    }
  }
}
