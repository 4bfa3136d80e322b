package org.chordlog.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Frames of one length in a stream of bytes, found by bytes that are the same in each of them. */
record BinaryCut(Framing framing, int startLength, List<byte[]> frames) {
  private static final int SHORTEST = 3;
  private static final int LONGEST = 16;
  private static final int LEAST_FRAMES = 16;
  private static final int MOST_BYTES = 4096;
  private static final int MOST_START = 4;
  private static final int PAUSE_MS = 10;

  /** Each way to begin a frame of the shortest length that repeats; none for text. */
  static List<BinaryCut> of(List<Arrival> stream) {
    byte[] bytes = newest(stream);
    if (isText(bytes)) {
      return List.of();
    }
    for (int length = SHORTEST;
        length <= LONGEST && bytes.length / length > LEAST_FRAMES;
        length++) {
      List<BinaryCut> cuts = ofLength(bytes, length);
      if (!cuts.isEmpty()) {
        return cuts;
      }
    }
    return paused(stream);
  }

  /** The newest bytes in one piece. */
  static byte[] newest(List<Arrival> stream) {
    int total = stream.stream().mapToInt(a -> a.bytes().length).sum();
    byte[] all = new byte[total];
    int at = 0;
    for (Arrival arrival : stream) {
      System.arraycopy(arrival.bytes(), 0, all, at, arrival.bytes().length);
      at += arrival.bytes().length;
    }
    return Arrays.copyOfRange(all, Math.max(0, total - MOST_BYTES), total);
  }

  private static boolean isText(byte[] bytes) {
    int printable = 0;
    for (byte b : bytes) {
      printable += (b >= ' ' && b < 0x7F) || b == '\r' || b == '\n' || b == '\t' ? 1 : 0;
    }
    return printable > 0.9 * bytes.length;
  }

  private static List<BinaryCut> ofLength(byte[] bytes, int length) {
    boolean[] constant = constant(bytes, length);
    List<BinaryCut> cuts = new ArrayList<>();
    for (int first = 0; first < length; first++) {
      int run = 0;
      while (run < length && constant[(first + run) % length]) {
        run++;
      }
      if (run > 0 && run < length - 1) {
        for (int start = 1; start <= Math.min(run, MOST_START); start++) {
          String marker = Bytes.text(bytes, first, first + start);
          cuts.add(new BinaryCut(Framing.fixed(marker, length), start, rows(bytes, first, length)));
        }
      }
    }
    return cuts;
  }

  /** Which places of a row of that length always hold the same byte. */
  private static boolean[] constant(byte[] bytes, int length) {
    boolean[] constant = new boolean[length];
    Arrays.fill(constant, true);
    for (int i = length; i < bytes.length; i++) {
      constant[i % length] &= bytes[i] == bytes[i - length];
    }
    return constant;
  }

  private static List<byte[]> rows(byte[] bytes, int first, int length) {
    List<byte[]> rows = new ArrayList<>();
    for (int at = first; at + length <= bytes.length; at += length) {
      rows.add(Arrays.copyOfRange(bytes, at, at + length));
    }
    return rows;
  }

  /** Frames without any such byte, when all that come between pauses have one length. */
  private static List<BinaryCut> paused(List<Arrival> stream) {
    List<byte[]> frames = new ArrayList<>();
    for (Arrival arrival : stream.subList(Math.min(1, stream.size()), stream.size())) {
      frames.add(arrival.bytes());
    }
    boolean alike = frames.size() > LEAST_FRAMES && frames.get(0).length >= 2;
    int length = alike ? frames.get(0).length : 0;
    if (length > LONGEST || !alike || frames.stream().anyMatch(f -> f.length != length)) {
      return List.of();
    }
    Framing framing = new Framing(Framing.Kind.FIXED_LENGTH, "", "", "", length, PAUSE_MS, 0);
    return List.of(new BinaryCut(framing, 0, frames));
  }
}
