package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** FrameBodies that match a pattern as a whole, in time that grows with their length alone. */
final class PatternReader implements FrameReader {
  private final FrameProfile profile;
  private final Pattern pattern;
  private final Groups groups;
  private final List<ValueGroup> groupsOfValues = new ArrayList<>();
  private final List<Decoded.Value> found = new ArrayList<>();

  PatternReader(FrameProfile profile) {
    this.profile = profile;
    pattern = FramePattern.compile(profile.pattern());
    groups = new Groups(pattern.namedGroups());
    for (String suffix : FramePattern.SUFFIXES) {
      if (groups.has("value" + suffix)) {
        groupsOfValues.add(new ValueGroup(profile, groups, suffix));
      }
    }
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    Matcher match = pattern.matcher(frame.body());
    if (!match.matches()) {
      return "does not match the pattern";
    }
    String status = groups.text(match, "status");
    StatusMeaning meaning = status.isEmpty() ? StatusMeaning.OK : profile.statuses().get(status);
    if (meaning == null) {
      return "unknown status '" + status + "'";
    }
    String reason = meaning.leavesValue() ? values(frame, match) : null;
    return reason == null ? give(frame, meaning, status, sink) : reason;
  }

  private @Nullable String values(Frame frame, Matcher match) {
    found.clear();
    byte[] raw = frame.raw();
    int channel = channel(groups.text(match, "channel"));
    if (channel < 0) {
      return "unknown channel";
    }
    for (ValueGroup group : groupsOfValues) {
      String reason = group.read(frame, match, raw, channel, found);
      if (reason != null) {
        return reason;
      }
    }
    return null;
  }

  /** The number of a channel's text; 0 for none, -1 when unknown. */
  private int channel(String text) {
    Integer named = profile.channels().get(text);
    if (named != null || text.isEmpty()) {
      return named == null ? 0 : named;
    }
    boolean digits = text.length() <= 2 && text.chars().allMatch(c -> c >= '0' && c <= '9');
    int number = digits ? Integer.parseInt(text) : -1;
    return number <= ProfileChannels.MOST ? number : -1;
  }

  private @Nullable String give(
      Frame frame, StatusMeaning meaning, String status, Consumer<Decoded> sink) {
    Decoded.Status.Kind kind = meaning.kind();
    if (meaning.leavesValue() && !found.isEmpty()) {
      found.forEach(sink);
    } else if (kind != null) {
      sink.accept(new Decoded.Status(frame.nanos, frame.raw(), kind, status));
    } else {
      return "no value";
    }
    return null;
  }
}
