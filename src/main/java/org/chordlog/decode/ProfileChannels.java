package org.chordlog.decode;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The channels that a profile's frames may give. */
final class ProfileChannels {
  private ProfileChannels() {}

  static Set<Integer> of(FrameProfile profile) {
    if (profile.pattern().isEmpty() || profile.kind() != DecoderKind.FRAMES) {
      return Set.of(0);
    }
    Map<String, Integer> groups = FramePattern.compile(profile.pattern()).namedGroups();
    Set<Integer> channels = new TreeSet<>();
    for (String suffix : FramePattern.SUFFIXES) {
      if (groups.containsKey("value" + suffix) && !suffix.isEmpty()) {
        channels.add(Integer.valueOf(suffix));
      }
    }
    if (groups.containsKey("value")) {
      plain(profile, groups.containsKey("channel"), channels);
    }
    return channels;
  }

  private static void plain(FrameProfile profile, boolean named, Set<Integer> channels) {
    for (int channel = 0; channel <= (named ? ValueReader.MOST_CHANNEL : 0); channel++) {
      channels.add(channel);
    }
    channels.addAll(profile.channels().values());
  }

  static String inWords(Set<Integer> channels) {
    return channels.size() > ValueReader.MOST_CHANNEL
        ? "0 to " + ValueReader.MOST_CHANNEL
        : channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
