package org.chordlog.decode;

import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The channels that a profile's frames may give. */
final class ProfileChannels {
  /** Highest number of a channel. */
  static final int MOST = 15;

  private ProfileChannels() {}

  /** By the pattern of its frames; {@code named} are those that are not sent as digits. */
  static Set<Integer> of(DecoderKind kind, String pattern, Collection<Integer> named) {
    if (pattern.isEmpty() || !kind.isText()) {
      return Set.of(0);
    }
    Map<String, Integer> groups = FramePattern.compile(pattern).namedGroups();
    Set<Integer> channels = new TreeSet<>();
    for (String suffix : FramePattern.SUFFIXES) {
      if (groups.containsKey("value" + suffix) && !suffix.isEmpty()) {
        channels.add(Integer.valueOf(suffix));
      }
    }
    if (groups.containsKey("value")) {
      plain(groups.containsKey("channel"), channels);
      channels.addAll(named);
    }
    return channels;
  }

  private static void plain(boolean numbered, Set<Integer> channels) {
    for (int channel = 0; channel <= (numbered ? MOST : 0); channel++) {
      channels.add(channel);
    }
  }

  static String inWords(Set<Integer> channels) {
    return channels.size() > MOST
        ? "0 to " + MOST
        : channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
