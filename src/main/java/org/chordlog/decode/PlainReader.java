package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** FrameBodies of one number and, behind it, an optional unit; no regular expression in the way. */
final class PlainReader implements FrameReader {
  private final ValueReader values;
  private final boolean button;

  PlainReader(FrameProfile profile) {
    values = new ValueReader(profile, profile.number());
    button = profile.buttonOnly();
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    String reason = values.number(frame.bytes, frame.bodyFrom, frame.bodyTo);
    if (reason == null) {
      reason = values.unit(frame.bytes, values.number.end, frame.bodyTo);
    }
    if (reason == null) {
      reason = values.value(false, 0);
    }
    if (reason == null) {
      sink.accept(values.taken(frame, frame.raw(), 0, button));
    }
    return reason;
  }
}
