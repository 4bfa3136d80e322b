package org.chordlog.station;

import java.nio.charset.StandardCharsets;
import org.chordlog.decode.Decoded;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Incident;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;

/**
 * Tells an indicator whose values are read from one that sends what can't be read, or values of
 * another channel only. One incident for as long as it lasts. Used by the station's thread alone.
 */
final class Reception {
  private static final long PATIENCE_NANOS = 2_000_000_000L;
  private static final int LEAST_FRAMES = 3;
  private static final int LEAST_BYTES = 64;
  private static final int SHOWN = 40;

  private final String station;
  private final Of of;
  private final IncidentLog incidents;
  private long readNanos;
  private long bytes;
  private int refused;
  private int others;
  private int otherChannel;
  private Decoded.@Nullable Damaged newest;
  private LinkState state = LinkState.OPEN;
  private long fromMicros;

  /** What sends, which channel of it is wanted, and by which key that is set. */
  record Of(String sender, int channel, String key) {}

  Reception(String station, Of of, IncidentLog incidents) {
    this.station = station;
    this.of = of;
    this.incidents = incidents;
  }

  void opened(long nanos, long nowMicros) {
    read(nanos);
    end(nowMicros);
  }

  /** A value of the channel, or what the indicator says of itself. */
  void read(long nanos) {
    readNanos = nanos;
    bytes = 0;
    refused = 0;
    others = 0;
  }

  void came(int count) {
    bytes += count;
  }

  void refused(Decoded.Damaged frame) {
    refused++;
    newest = frame;
  }

  void otherChannel(int number) {
    others++;
    otherChannel = number;
  }

  /** The state at that time; notes the incident when it ends. */
  LinkState state(long nanos, long nowMicros) {
    LinkState now = judged(nanos);
    if (now != state) {
      end(nowMicros);
      state = now;
      fromMicros = nowMicros - (nanos - readNanos) / 1_000;
    }
    return now;
  }

  private LinkState judged(long nanos) {
    if (nanos - readNanos < PATIENCE_NANOS) {
      return LinkState.OPEN;
    }
    if (others >= LEAST_FRAMES) {
      return LinkState.OTHER_CHANNEL;
    }
    boolean unreadable = refused >= LEAST_FRAMES || bytes >= LEAST_BYTES;
    return unreadable ? LinkState.UNREADABLE : LinkState.OPEN;
  }

  /** The link is lost, the station stops, or values are read again. */
  void end(long nowMicros) {
    if (state != LinkState.OPEN) {
      Incident.Kind kind =
          state == LinkState.UNREADABLE ? Incident.Kind.UNREADABLE : Incident.Kind.OTHER_CHANNEL;
      incidents.add(new Incident(0, station, kind, fromMicros, nowMicros, refused, message()));
    }
    state = LinkState.OPEN;
  }

  String message() {
    return switch (state) {
      case UNREADABLE ->
          Capital.of(of.sender()) + " sends, but nothing can be read" + newest() + ".";
      case OTHER_CHANNEL ->
          "Values come of channel "
              + otherChannel
              + ", none of channel "
              + of.channel()
              + ", which is to measure: set the station's "
              + of.key()
              + ".";
      default -> "Open.";
    };
  }

  private String newest() {
    Decoded.Damaged frame = newest;
    if (frame == null) {
      return "; is the rate right?";
    }
    return ": newest '" + text(frame.raw()) + "': " + frame.reason();
  }

  /** Control characters and bytes that are no text as their pictures or a dot. */
  private static String text(byte[] raw) {
    String latin = new String(raw, StandardCharsets.ISO_8859_1);
    StringBuilder shown = new StringBuilder();
    for (char c : latin.substring(0, Math.min(SHOWN, latin.length())).toCharArray()) {
      shown.append(c < ' ' ? (char) (0x2400 + c) : c < 0x7F ? c : '·');
    }
    return shown.toString();
  }
}
