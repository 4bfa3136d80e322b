package org.chordlog.decode;

import com.google.re2j.Pattern;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Takes markers and check off a frame, tells status texts and echoes, and has the body read. */
final class EnvelopeReader implements FrameReader {
  private final int startLength;
  private final int endLength;
  private final Map<String, StatusMeaning> statuses;
  private final @Nullable String echo;
  private final @Nullable CheckReader check;
  private final FrameReader body;
  private final List<Pattern> passOver;

  EnvelopeReader(FrameProfile profile) {
    startLength = profile.framing().startLength();
    endLength = profile.framing().endLength();
    statuses = profile.statuses();
    Polling polling = profile.polling();
    echo = polling == null ? null : polling.request().strip();
    check =
        profile.checksum().kind() == Checksum.Kind.NONE
            ? null
            : new CheckReader(profile.checksum(), startLength, endLength);
    body = bodyReader(profile);
    passOver = profile.passOver().stream().map(FramePattern::compile).toList();
  }

  private static FrameReader bodyReader(FrameProfile profile) {
    BinaryNumber binary = profile.binary();
    LengthUnit unit = profile.unit();
    if (binary != null && unit != null) {
      return new BinaryReader(profile, binary, unit);
    }
    return profile.pattern().isEmpty() ? new PlainReader(profile) : new PatternReader(profile);
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    frame.bodyFrom = frame.from + startLength;
    frame.bodyTo = frame.to - endLength;
    String reason = check == null ? null : check.verify(frame);
    if (reason == null) {
      reason = body.read(frame, sink);
      reason = reason != null && isStatus(frame, sink) ? null : reason;
    }
    return reason == null || isEcho(frame) || isPassedOver(frame) ? null : reason;
  }

  private boolean isPassedOver(Frame frame) {
    return !passOver.isEmpty()
        && passOver.stream().anyMatch(pattern -> pattern.matches(frame.whole()));
  }

  private boolean isEcho(Frame frame) {
    return echo != null && frame.body().strip().equals(echo);
  }

  private boolean isStatus(Frame frame, Consumer<Decoded> sink) {
    if (statuses.isEmpty()) {
      return false;
    }
    String text = frame.body().strip();
    StatusMeaning meaning = statuses.get(text);
    if (meaning == null) {
      return false;
    }
    if (meaning.kind() != null) {
      sink.accept(new Decoded.Status(frame.nanos, frame.raw(), meaning.kind(), text));
    }
    return true;
  }
}
