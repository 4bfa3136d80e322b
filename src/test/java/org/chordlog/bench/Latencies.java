package org.chordlog.bench;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.harness.EventNotes;
import org.chordlog.harness.Indicators;

/**
 * Time from the last byte of the frame whose value an event carries, handed to the device, to the
 * event read at a client: of live values, and of readings (from the last frame that the reading was
 * taken from; its commit is within). The part within the service begins when it had read the frame,
 * by the time that the event carries: the rest is the system's way through the pseudo-terminal.
 */
final class Latencies {
  private static final Pattern LIVE =
      Pattern.compile("\"station\":\"S(\\d+)\".*\"valueMm\":(-?[\\d.]+)");
  private static final Pattern READING =
      Pattern.compile("\"station\":\"S(\\d+)\".*\"lastSampleSequence\":(\\d+)");
  private static final Pattern AT = Pattern.compile("\"at\":\"([^\"]+)\"");

  private final Indicators indicators;
  private boolean held;
  private final Times live = new Times();
  private final Times liveWithin = new Times();
  private final Times readings = new Times();
  private final Times readingsWithin = new Times();

  Latencies(Indicators indicators) {
    this.indicators = indicators;
  }

  /** While true, nothing counts: the measurement itself holds up what it measures. */
  synchronized void hold(boolean now) {
    held = now;
  }

  synchronized void hear(EventNotes.Event event) {
    if (held) {
      return;
    }
    if (event.name().equals("live")) {
      Matcher value = LIVE.matcher(event.data());
      if (value.find()) {
        live.add(event.nanos() - ofLive(value), ofLive(value) > 0);
        liveWithin.add(sinceRead(event), true);
      }
    } else if (event.name().equals("reading")) {
      Matcher reading = READING.matcher(event.data());
      if (reading.find()) {
        readings.add(event.nanos() - ofReading(reading), ofReading(reading) > 0);
        readingsWithin.add(sinceRead(event), true);
      }
    }
  }

  /** A line that came straight from a port. */
  synchronized void hearRelayed(int station, double mm) {
    long sent = ofLive(station, mm);
    live.add(System.nanoTime() - sent, sent > 0);
  }

  private static long sinceRead(EventNotes.Event event) {
    Matcher at = AT.matcher(event.data());
    return at.find() ? ChronoUnit.NANOS.between(Instant.parse(at.group(1)), Instant.now()) : 0;
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

  /** Forgets what was measured while all warmed up. */
  synchronized void restart() {
    for (Times each : new Times[] {live, liveWithin, readings, readingsWithin}) {
      each.count = 0;
    }
    indicators.forgetLateness();
  }

  synchronized Percentiles live() {
    return live.percentiles();
  }

  synchronized Percentiles liveWithin() {
    return liveWithin.percentiles();
  }

  synchronized Percentiles readings() {
    return readings.percentiles();
  }

  synchronized Percentiles readingsWithin() {
    return readingsWithin.percentiles();
  }

  /** How late this program itself woke up to send frames: the noise of the measurement. */
  Percentiles senderLate() {
    return Percentiles.of(indicators.lateness());
  }

  /** The newest of many times. */
  private static final class Times {
    private static final int KEPT = 1 << 20;
    private final long[] nanos = new long[KEPT];
    private int count;

    void add(long time, boolean known) {
      if (known) {
        nanos[count % KEPT] = time;
        count = count + 1 == 2 * KEPT ? KEPT : count + 1;
      }
    }

    Percentiles percentiles() {
      return Percentiles.of(Arrays.copyOf(nanos, Math.min(count, KEPT)));
    }
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

    @Override
    public String toString() {
      return "p50 %.1f, p95 %.1f, p99 %.1f, worst %.1f ms (%,d)"
          .formatted(p50, p95, p99, worst, count);
    }
  }
}
