package org.chordlog.web;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.station.FeedSettings;
import org.chordlog.station.StationSettings;
import org.chordlog.web.http.Refusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What pages may reach on other computers: enough to set a device server up, too little to look
 * through a network. Different addresses and ports within an hour are counted for the whole
 * service, but for those that stations have already; each is logged with who asked. Any thread.
 */
final class OtherComputers {
  static final int MOST = 20;
  private static final long HOUR_NANOS = TimeUnit.HOURS.toNanos(1);
  private static final Logger LOG = LoggerFactory.getLogger(OtherComputers.class);

  private final Supplier<List<StationSettings>> stations;
  private final LongSupplier nanos;

  /** When each was first asked for, the oldest first. */
  private final Map<String, Long> asked = new LinkedHashMap<>();

  OtherComputers(Supplier<List<StationSettings>> stations, LongSupplier nanos) {
    this.stations = stations;
    this.nanos = nanos;
  }

  /** Before a station gets these links. */
  void ask(StationSettings station, String by) {
    ask("link.host", station.link(), by);
    FeedSettings feed = station.feed();
    FeedSettings.CountLink counts = feed == null ? null : feed.link();
    if (counts != null) {
      ask("feed.link.host", counts.link(), by);
    }
  }

  /**
   * Before that link is opened for a page: {@link BadInput} at that field for an address at which
   * no device can be, 429 beyond what an hour allows.
   */
  void ask(String field, LinkSettings link, String by) {
    if (link instanceof TcpSettings tcp && !known(tcp)) {
      count(reached(field, tcp), tcp, by);
    }
  }

  private static String reached(String field, TcpSettings tcp) {
    try {
      return tcp.reached();
    } catch (LinkException e) {
      throw new BadInput(
          field,
          tcp.host(),
          "can't be opened: " + e.getMessage(),
          "an address of the device's own");
    }
  }

  private boolean known(TcpSettings tcp) {
    String target = target(tcp);
    return stations.get().stream()
        .flatMap(OtherComputers::links)
        .anyMatch(link -> link instanceof TcpSettings other && target(other).equals(target));
  }

  private static String target(TcpSettings tcp) {
    return tcp.target().toLowerCase(Locale.ROOT);
  }

  private static Stream<LinkSettings> links(StationSettings station) {
    FeedSettings feed = station.feed();
    FeedSettings.CountLink counts = feed == null ? null : feed.link();
    return counts == null ? Stream.of(station.link()) : Stream.of(station.link(), counts.link());
  }

  private synchronized void count(String reached, TcpSettings tcp, String by) {
    long now = nanos.getAsLong();
    asked.values().removeIf(since -> now - since >= HOUR_NANOS);
    boolean allowed = asked.containsKey(reached) || asked.size() < MOST;
    log(allowed, tcp, reached, by);
    if (!allowed) {
      throw tooMany(now);
    }
    asked.putIfAbsent(reached, now);
  }

  private static void log(boolean allowed, TcpSettings tcp, String reached, String by) {
    (allowed ? LOG.atInfo() : LOG.atWarn())
        .addKeyValue("by", by)
        .addKeyValue("target", tcp.target())
        .addKeyValue("reached", reached)
        .log(allowed ? "another computer is asked" : "refused: too many other computers asked");
  }

  private Refusal tooMany(long now) {
    Iterator<Long> oldest = asked.values().iterator();
    long seconds = TimeUnit.NANOSECONDS.toSeconds(oldest.next() + HOUR_NANOS - now) + 1;
    return new Refusal(
        429,
        "Too many other computers",
        "%s different addresses and ports of other computers were tried within the last hour, as many as this service tries. The next can be tried in %s min; those already tried, and those of stations, at any time."
            .formatted(MOST, (seconds + 59) / 60),
        Map.of("Retry-After", String.valueOf(seconds)));
  }
}
