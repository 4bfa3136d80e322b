package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.capture.Direction;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.jspecify.annotations.Nullable;

/** Reads a port for a while by several profiles side by side, to show a person what each reads. */
public final class LiveReading {
  /** A hand that pushes a plunger in moves it further than this. */
  private static final long PUSHED_NM = 100_000;

  private static final int MOST_AT_AN_END = 5;
  private static final double LEAST_TURN = 0.3;

  /**
   * What one channel read.
   *
   * @param firstNm median of its first values
   * @param lastNm median of its newest values
   * @param direction what pushing the plunger in does to it, if it was pushed in meanwhile; null
   *     where it hardly moved
   */
  public record Channel(
      int channel, int count, long firstNm, long lastNm, @Nullable Direction direction) {
    private static Channel of(int channel, List<Long> values) {
      int some = Math.max(1, Math.min(MOST_AT_AN_END, values.size() / 3));
      long first = median(values.subList(0, some));
      long last = median(values.subList(values.size() - some, values.size()));
      return new Channel(channel, values.size(), first, last, direction(last - first));
    }

    private static @Nullable Direction direction(long movedNm) {
      if (Math.abs(movedNm) < PUSHED_NM) {
        return null;
      }
      return movedNm > 0 ? Direction.COUNTS_UP : Direction.COUNTS_DOWN;
    }

    private static long median(List<Long> values) {
      return values.stream().sorted().skip(values.size() / 2).findFirst().orElse(0L);
    }
  }

  private LiveReading() {}

  /**
   * Reads for so many seconds; a list of channels for each profile, in its order. Profiles that ask
   * each in its own words, as for registers, take turns.
   */
  public static List<List<Channel>> of(
      LinkSettings settings, List<FrameProfile> profiles, double seconds) throws LinkException {
    if (profiles.stream().noneMatch(profile -> profile.modbus() != null)) {
      return together(settings, profiles, seconds);
    }
    List<List<Channel>> all = new ArrayList<>();
    for (FrameProfile profile : profiles) {
      all.addAll(
          together(settings, List.of(profile), Math.max(LEAST_TURN, seconds / profiles.size())));
    }
    return all;
  }

  private static List<List<Channel>> together(
      LinkSettings settings, List<FrameProfile> profiles, double seconds) throws LinkException {
    List<Map<Integer, List<Long>>> values = new ArrayList<>();
    profiles.forEach(profile -> values.add(new TreeMap<>()));
    new ProfileLoop(profiles, (index, decoded) -> take(values.get(index), decoded))
        .run(settings, seconds);
    return values.stream().map(LiveReading::channels).toList();
  }

  private static void take(Map<Integer, List<Long>> values, Decoded decoded) {
    if (decoded instanceof Decoded.Value value) {
      values.computeIfAbsent(value.channel(), c -> new ArrayList<>()).add(value.valueNm());
    }
  }

  private static List<Channel> channels(Map<Integer, List<Long>> values) {
    return values.entrySet().stream().map(e -> Channel.of(e.getKey(), e.getValue())).toList();
  }
}
