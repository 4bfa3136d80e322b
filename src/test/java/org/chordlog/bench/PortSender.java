package org.chordlog.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.PseudoTerminal;

/** How the other end of a pseudo-terminal sends lines; it waits where the system takes no more. */
enum PortSender {
  /** As fast as the system takes them, 256 lines a write. */
  BLOCKS("as fast as the system takes blocks", 256 * PortSender.LINE, 0),
  /** As fast as the system takes them, each line a write of its own. */
  LINES("as fast as the system takes single lines", PortSender.LINE, 0),
  /** Full-speed USB: at most 19 bulk packets of 64 bytes a ms (USB 2.0, table 5-9). */
  USB("full-speed USB, 135,000 lines/s", 19 * 64, 1_000_000);

  static final int LINE = 9;
  private static final byte[] LINES_256 = lines();

  final String words;
  private final int piece;
  private final long pieceNanos;

  PortSender(String words, int piece, long pieceNanos) {
    this.words = words;
    this.piece = piece;
    this.pieceNanos = pieceNanos;
  }

  /** Sends for so long, and whole lines; how many. */
  long send(PseudoTerminal terminal, long nanos) throws IOException {
    long start = System.nanoTime();
    long sent = 0;
    for (long i = 1; System.nanoTime() - start < nanos || sent % LINE != 0; i++) {
      int left = (int) (sent % LINE);
      int count = System.nanoTime() - start < nanos ? piece : LINE - left;
      sent += write(terminal, (int) (sent % LINES_256.length), count);
      await(start + i * pieceNanos);
    }
    return sent / LINE;
  }

  private static int write(PseudoTerminal terminal, int from, int count) throws IOException {
    int taken = 0;
    while (taken < count) {
      int at = (from + taken) % LINES_256.length;
      int to = Math.min(LINES_256.length, at + count - taken);
      int now = terminal.write(Arrays.copyOfRange(LINES_256, at, to));
      taken += now;
      if (now == 0) {
        Thread.onSpinWait();
      }
    }
    return taken;
  }

  private static void await(long due) {
    for (long left = due - System.nanoTime(); left > 0; left = due - System.nanoTime()) {
      LockSupport.parkNanos(left);
    }
  }

  /** A plunger that goes out and in, with noise of one step. */
  private static byte[] lines() {
    ByteArrayOutputStream block = new ByteArrayOutputStream();
    for (int i = 0; i < 256; i++) {
      double mm = (i < 128 ? 5 : -6) + 0.001 * (i % 2);
      block.writeBytes(String.format(Locale.ROOT, "%+07.3f\r\n", mm).getBytes(US_ASCII));
    }
    return block.toByteArray();
  }
}
