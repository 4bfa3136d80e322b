package org.chordlog.station;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Decoder;
import org.chordlog.decode.Decoders;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.Link;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.jspecify.annotations.Nullable;

/**
 * Feeds what a link sends to the decoders of several profiles; the first one's requests are sent.
 */
final class ProfileLoop {
  private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(2);
  private final List<Decoder> decoders;
  private final BiConsumer<Integer, Decoded> sink;
  private final byte[] buffer = new byte[4096];

  /** {@code sink} is given the place of the profile and what it made of the bytes. */
  ProfileLoop(List<FrameProfile> profiles, BiConsumer<Integer, Decoded> sink) {
    decoders = profiles.stream().map(Decoders::of).toList();
    this.sink = sink;
  }

  void run(LinkSettings settings, double seconds) throws LinkException {
    long duration = (long) (seconds * 1e9);
    try (Link link = settings.open()) {
      long start = System.nanoTime();
      for (long now = start; now - start < duration; now = System.nanoTime()) {
        ask(link, now);
        int count = link.readAvailable(buffer);
        if (count == 0) {
          LockSupport.parkNanos(NAP_NANOS);
        }
        feed(count, System.nanoTime());
      }
    }
  }

  private void ask(Link link, long now) throws LinkException {
    byte @Nullable [] request = decoders.isEmpty() ? null : decoders.get(0).request(now);
    if (request != null) {
      link.write(request);
    }
  }

  private void feed(int count, long nanos) {
    for (int i = 0; i < decoders.size(); i++) {
      int place = i;
      if (count > 0) {
        decoders.get(i).feed(buffer, 0, count, nanos, decoded -> sink.accept(place, decoded));
      } else {
        decoders.get(i).idle(nanos, decoded -> sink.accept(place, decoded));
      }
    }
  }
}
