package org.chordlog.decode;

import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Takes markers and check off a frame, tells status texts and echoes, and has the body read. */
final class EnvelopeReader implements FrameReader {
  private final int startLength;
  private final int endLength;
  private final Map<String, Meaning> statuses;
  private final @Nullable String echo;
  private final @Nullable CheckReader check;
  private final FrameReader body;

  EnvelopeReader(FrameProfile profile) {
    boolean marked = profile.framing().kind() == Framing.Kind.MARKERS;
    startLength = marked ? profile.framing().start().length() : 0;
    endLength = marked ? profile.framing().end().length() : 0;
    statuses = profile.statuses();
    Polling polling = profile.polling();
    echo = polling == null ? null : polling.request().strip();
    check =
        profile.checksum().kind() == Checksum.Kind.NONE
            ? null
            : new CheckReader(profile.checksum(), startLength, endLength);
    body = profile.pattern().isEmpty() ? new PlainReader(profile) : new PatternReader(profile);
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    frame.bodyFrom = frame.from + startLength;
    frame.bodyTo = frame.to - endLength;
    String reason = check == null ? null : check.verify(frame);
    if (reason != null) {
      return isEcho(frame) ? null : reason;
    }
    reason = body.read(frame, sink);
    return reason == null || isEcho(frame) || isStatus(frame, sink) ? null : reason;
  }

  private boolean isEcho(Frame frame) {
    return echo != null && frame.body().strip().equals(echo);
  }

  private boolean isStatus(Frame frame, Consumer<Decoded> sink) {
    if (statuses.isEmpty()) {
      return false;
    }
    String text = frame.body().strip();
    Meaning meaning = statuses.get(text);
    if (meaning == null) {
      return false;
    }
    if (meaning.kind() != null) {
      sink.accept(new Decoded.Status(frame.nanos, frame.raw(), meaning.kind(), text));
    }
    return true;
  }
}
