package org.chordlog.bench;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.harness.EventNotes;
import org.chordlog.harness.Indicators;

/**
 * Time from the last byte of a frame handed to the device to the event read at a client: of live
 * values, and of readings (from the last frame that the reading was taken from; its commit is
 * within).
 */
final class Latencies {
  private static final Pattern LIVE =
      Pattern.compile("\"station\":\"S(\\d+)\".*\"valueMm\":(-?[\\d.]+)");
  private static final Pattern READING =
      Pattern.compile("\"station\":\"S(\\d+)\".*\"lastSampleSequence\":(\\d+)");
  private static final int MOST = 2_000_000;

  private final Indicators indicators;
  private final long[] live = new long[MOST];
  private final long[] readings = new long[MOST];
  private int liveCount;
  private int readingCount;

  Latencies(Indicators indicators) {
    this.indicators = indicators;
  }

  synchronized void hear(EventNotes.Event event) {
    if (event.name().equals("live")) {
      Matcher value = LIVE.matcher(event.data());
      if (value.find()) {
        liveCount = add(live, liveCount, event.nanos(), ofLive(value));
      }
    } else if (event.name().equals("reading")) {
      Matcher reading = READING.matcher(event.data());
      if (reading.find()) {
        readingCount = add(readings, readingCount, event.nanos(), ofReading(reading));
      }
    }
  }

  /** A line that came straight from a port. */
  synchronized void hearRelayed(int station, double mm) {
    liveCount = add(live, liveCount, System.nanoTime(), ofLive(station, mm));
  }

  private long ofLive(Matcher value) {
    return ofLive(Integer.parseInt(value.group(1)), Double.parseDouble(value.group(2)));
  }

  private long ofLive(int station, double mm) {
    long microns = Math.round(mm * 1_000);
    return indicators.sentNanos(station, indicators.frameInAir(station, microns));
  }

  /** A station counts its samples from 1, as the indicators their frames. */
  private long ofReading(Matcher reading) {
    return indicators.sentNanos(
        Integer.parseInt(reading.group(1)), Long.parseLong(reading.group(2)));
  }

  private static int add(long[] to, int count, long heard, long sent) {
    if (sent == 0 || count == MOST) {
      return count;
    }
    to[count] = heard - sent;
    return count + 1;
  }

  /** Forgets what was measured while all warmed up. */
  synchronized void restart() {
    liveCount = 0;
    readingCount = 0;
  }

  synchronized Percentiles live() {
    return Percentiles.of(Arrays.copyOf(live, liveCount));
  }

  synchronized Percentiles readings() {
    return Percentiles.of(Arrays.copyOf(readings, readingCount));
  }

  /** Of times in milliseconds. */
  record Percentiles(int count, double p50, double p95, double p99, double worst) {
    static Percentiles of(long[] nanos) {
      Arrays.sort(nanos);
      return new Percentiles(
          nanos.length, at(nanos, 0.5), at(nanos, 0.95), at(nanos, 0.99), at(nanos, 1));
    }

    private static double at(long[] sorted, double share) {
      int rank = (int) Math.ceil(share * sorted.length) - 1;
      return sorted.length == 0 ? Double.NaN : sorted[Math.max(0, rank)] / 1e6;
    }
  }
}
