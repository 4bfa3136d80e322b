package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Frames of one number and, behind it, an optional unit; no regular expression in the way. */
final class PlainReader implements FrameReader {
  private final ValueReader values;
  private final boolean button;

  PlainReader(FrameProfile profile) {
    values = new ValueReader(profile);
    button = profile.buttonOnly();
  }

  @Override
  public @Nullable String read(byte[] bytes, int from, int to, long nanos, Consumer<Decoded> sink) {
    String reason = values.number(bytes, from, to);
    if (reason == null) {
      reason = values.unit(bytes, values.number.end, to);
    }
    if (reason == null) {
      reason = values.value(false, 0);
    }
    if (reason == null) {
      byte[] raw = Bytes.copy(bytes, from, to);
      sink.accept(new Decoded.Value(nanos, raw, values.nm(), values.unit(), 0, button));
    }
    return reason;
  }
}
