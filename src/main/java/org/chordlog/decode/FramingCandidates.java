package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Ways to cut a stream into frames, each with the check that holds and the bodies it leaves. */
final class FramingCandidates {
  private static final int LEAST_FRAMES = 3;
  private static final int PAUSE_MS = 20;
  private static final int LONGEST_FIXED = 32;

  /** One way; the first body, which may have lost its beginning, is left out. */
  record Cut(Framing framing, Checksum checksum, List<String> bodies) {}

  private FramingCandidates() {}

  static List<Cut> of(List<Arrival> stream) {
    List<Cut> cuts = new ArrayList<>();
    for (Framing framing : framings(stream)) {
      boolean marked = framing.kind() == Framing.Kind.MARKERS;
      for (Checksum checksum : Checks.usual(marked)) {
        Cut cut = cut(framing, checksum, stream);
        if (cut != null) {
          cuts.add(cut);
        }
      }
    }
    return cuts;
  }

  private static List<Framing> framings(List<Arrival> stream) {
    List<Framing> framings = new ArrayList<>();
    String text = text(stream);
    boolean lines = text.indexOf('\r') >= 0 || text.indexOf('\n') >= 0;
    if (lines) {
      framings.add(Framing.LINES);
    }
    if (text.indexOf('\u0002') >= 0 && text.indexOf('\u0003') >= 0) {
      framings.add(Framing.markers("\u0002", "\u0003"));
    }
    if (text.indexOf('\u0002') >= 0 && text.indexOf('\r') >= 0) {
      framings.add(Framing.markers("\u0002", "\r"));
    }
    if (text.indexOf('$') >= 0 && text.indexOf('*') >= 0) {
      framings.add(Framing.markers("$", "*"));
    }
    if (!lines) {
      framings.add(Framing.pauses(PAUSE_MS));
      fixed(text).forEach(framings::add);
    }
    return framings;
  }

  private static String text(List<Arrival> stream) {
    StringBuilder text = new StringBuilder();
    stream.forEach(a -> text.append(Bytes.text(a.bytes(), 0, a.bytes().length)));
    return text.toString();
  }

  /** The most common distance from one sign to the next. */
  private static List<Framing> fixed(String text) {
    int[] counts = new int[LONGEST_FIXED + 1];
    int last = -1;
    for (int at = 0; at < text.length(); at++) {
      if (text.charAt(at) == '+' || text.charAt(at) == '-') {
        if (last >= 0 && at - last <= LONGEST_FIXED) {
          counts[at - last]++;
        }
        last = at;
      }
    }
    int best = 0;
    for (int length = 1; length <= LONGEST_FIXED; length++) {
      best = counts[length] > counts[best] ? length : best;
    }
    return counts[best] < LEAST_FRAMES || best < 2 ? List.of() : List.of(Framing.fixed(best));
  }

  /** Only the sign tells where a frame of fixed length begins. */
  private static List<Arrival> fromSign(List<Arrival> stream) {
    List<Arrival> rest = new ArrayList<>();
    for (Arrival arrival : stream) {
      String text = Bytes.text(arrival.bytes(), 0, arrival.bytes().length);
      int sign = rest.isEmpty() ? text.replace('-', '+').indexOf('+') : 0;
      if (sign >= 0) {
        byte[] bytes = Bytes.copy(arrival.bytes(), sign, arrival.bytes().length);
        rest.add(new Arrival(arrival.monotonicNanos(), bytes));
      }
    }
    return rest;
  }

  private static @Nullable Cut cut(Framing framing, Checksum checksum, List<Arrival> stream) {
    Collector collector = new Collector(framing, checksum);
    Framer framer = Decoders.framer(framing, checksum);
    long last = Long.MIN_VALUE / 2;
    for (Arrival arrival :
        framing.kind() == Framing.Kind.FIXED_LENGTH ? fromSign(stream) : stream) {
      if (arrival.monotonicNanos() - last >= PAUSE_MS * 1_000_000L
          && framing.idleMs() > 0
          && framer.holds()) {
        framer.pause(last, collector);
      }
      last = arrival.monotonicNanos();
      framer.feed(arrival.bytes(), 0, arrival.bytes().length, last, collector);
    }
    return collector.bodies.size() < LEAST_FRAMES || collector.failed * 5 > collector.bodies.size()
        ? null
        : new Cut(framing, checksum, List.copyOf(collector.bodies));
  }

  /** Takes frames whose check holds. */
  private static final class Collector implements Framer.Sink {
    private final int startLength;
    private final int endLength;
    private final @Nullable CheckReader check;
    private final Frame frame = new Frame();
    private final List<String> bodies = new ArrayList<>();
    private int failed;
    private boolean first = true;

    Collector(Framing framing, Checksum checksum) {
      startLength = framing.startLength();
      endLength = framing.endLength();
      check =
          checksum.kind() == Checksum.Kind.NONE
              ? null
              : new CheckReader(checksum, startLength, endLength);
    }

    @Override
    public @Nullable String frame(byte[] bytes, int from, int to, long nanos) {
      frame.set(bytes, from, to, nanos);
      frame.bodyFrom = from + startLength;
      frame.bodyTo = to - endLength;
      String reason = check == null ? null : check.verify(frame);
      if (reason != null) {
        failed += first ? 0 : 1;
      } else if (!first) {
        bodies.add(frame.body());
      }
      first = false;
      return reason;
    }

    @Override
    public void damaged(byte[] bytes, int from, int to, long nanos, String reason) {}
  }
}
