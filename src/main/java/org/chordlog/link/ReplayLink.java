package org.chordlog.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.chordlog.link.LinkException.Reason;
import org.jspecify.annotations.Nullable;

/** Plays a recorded stream; at its end the link has ended and is not opened again. */
final class ReplayLink implements Link {
  private static final long TICK_NANOS = SerialOpener.TICK_MILLIS * 1_000_000L;

  /** Characters; {@link Recording} has two for each byte of a chunk. */
  private static final int LONGEST_LINE = 1 << 18;

  private final BufferedReader lines;
  private final ReplaySettings settings;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final long startNanos = System.nanoTime();
  private int lineNumber;
  private Recording.@Nullable Chunk next;
  private int taken;

  private ReplayLink(BufferedReader lines, ReplaySettings settings) {
    this.lines = lines;
    this.settings = settings;
  }

  static ReplayLink open(ReplaySettings settings) throws LinkException {
    if (Files.exists(settings.file()) && !Files.isRegularFile(settings.file())) {
      throw new LinkException(
          Reason.REFUSED, settings.file() + " is no recording: it is a device, pipe or folder.");
    }
    try {
      return new ReplayLink(Files.newBufferedReader(settings.file()), settings);
    } catch (IOException e) {
      throw new LinkException(
          Reason.MISSING, "The recording " + settings.file() + " can't be read.");
    }
  }

  @Override
  public int read(byte[] buffer) throws LinkException {
    return read(buffer, TICK_NANOS);
  }

  @Override
  public int readAvailable(byte[] buffer) throws LinkException {
    return read(buffer, 0);
  }

  private int read(byte[] buffer, long patienceNanos) throws LinkException {
    if (closed.getCount() == 0) {
      throw new LinkException(Reason.LOST, settings.target() + " is closed.");
    }
    Recording.Chunk chunk = chunk();
    long wait = waitNanos(chunk);
    if (wait > patienceNanos) {
      sleep(patienceNanos);
      return 0;
    }
    sleep(wait);
    return take(chunk, buffer);
  }

  private Recording.Chunk chunk() throws LinkException {
    Recording.@Nullable Chunk ready = next;
    if (ready == null) {
      ready = Recording.parse(line(), lineNumber);
      next = ready;
      taken = 0;
    }
    return ready;
  }

  private String line() throws LinkException {
    try {
      for (String line = bounded(); line != null; line = bounded()) {
        lineNumber++;
        if (!line.isBlank() && !line.startsWith("#")) {
          return line;
        }
      }
    } catch (IOException e) {
      throw new LinkException(Reason.LOST, settings.target() + " can't be read on.");
    }
    throw new LinkException(Reason.ENDED, settings.target() + " has ended.");
  }

  /** The next line; a file without lines is no recording, and may be larger than the memory. */
  private @Nullable String bounded() throws IOException, LinkException {
    StringBuilder line = new StringBuilder();
    int c = lines.read();
    while (c >= 0 && c != '\n') {
      if (line.length() == LONGEST_LINE) {
        throw new LinkException(
            Reason.REFUSED,
            "Line " + (lineNumber + 1) + " of the recording is longer than " + LONGEST_LINE + ".");
      }
      line.append((char) c);
      c = lines.read();
    }
    return c < 0 && line.isEmpty() ? null : line.toString();
  }

  private long waitNanos(Recording.Chunk chunk) {
    if (settings.speed() == 0) {
      return 0;
    }
    long due = Math.round(chunk.atMicros() * 1_000.0 / settings.speed());
    return Math.max(0, due - (System.nanoTime() - startNanos));
  }

  private void sleep(long nanos) throws LinkException {
    try {
      if (nanos > 0 && closed.await(nanos, TimeUnit.NANOSECONDS)) {
        throw new LinkException(Reason.LOST, settings.target() + " is closed.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private int take(Recording.Chunk chunk, byte[] buffer) {
    int count = Math.min(buffer.length, chunk.bytes().length - taken);
    System.arraycopy(chunk.bytes(), taken, buffer, 0, count);
    taken += count;
    if (taken == chunk.bytes().length) {
      next = null;
    }
    return count;
  }

  @Override
  public void write(byte[] bytes) {
    // a recording answers nothing
  }

  @Override
  public boolean footSwitchClosed() {
    return false;
  }

  @Override
  public void close() {
    closed.countDown();
    try {
      lines.close();
    } catch (IOException e) {
      // nothing was written
    }
  }
}
