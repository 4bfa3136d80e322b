package org.chordlog.station;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.simulator.ScenarioFile;

/**
 * An invented section runs through in real time; its depths and the counts of its length come over
 * a device each, the depths later than their counts by a delay.
 */
final class TwoLinkRig {
  static final double FEED_MM_PER_SECOND = 300;

  /** A value of the line, as it was sent. */
  record Sent(double seconds, long depthNm, long lengthNm) {}

  private record Due(long nanos, String frame) {}

  final List<Sent> sent = new ArrayList<>();
  LineStream stream;
  private final PseudoTerminal depths;
  private PseudoTerminal counts;
  private final double delayMs;
  private final Deque<Due> late = new ArrayDeque<>();
  private long putOffNanos;

  TwoLinkRig(PseudoTerminal depths, PseudoTerminal counts, LineScenario scenario, double delayMs) {
    this.depths = depths;
    this.counts = counts;
    this.delayMs = delayMs;
    stream = new LineStream(scenario, LineErrors.NONE, 7);
  }

  /** From the next value on other pieces come, with counts from the start. */
  void next(LineScenario scenario, long seed) {
    stream = new LineStream(scenario, LineErrors.NONE, seed);
    sent.clear();
  }

  /** The encoder is plugged in anew. */
  void counts(PseudoTerminal now) {
    counts = now;
  }

  /** Pieces of 2 m that run as often as there are passes; counts know of no delay of their own. */
  static LineScenario scenario(Path directory, String passes) throws IOException {
    String text =
        Files.readString(Path.of("demo-data/canopy-line.yaml"))
            .replace("lengthMm: 6000", "lengthMm: 2000")
            .replace("mmPerSecond: 100", "mmPerSecond: " + FEED_MM_PER_SECOND)
            .replace("valuesPerSecond: 50", "valuesPerSecond: 100")
            .replace("- {piece: 3, atMm: 2300, seconds: 8}", "[]")
            .replace("- {piece: 5, atMm: 3100, backMm: 180}", "[]")
            .replace("passShares: [1]", "passShares: " + passes)
            .replace("delayMs: 10", "delayMs: 0")
            .replace("jitterMs: 5", "jitterMs: 0");
    Path file = directory.resolve("line" + passes.length() + ".yaml");
    Files.writeString(file, text);
    return ScenarioFile.readLine(file.toString());
  }

  /** The part {@code feed} of the station; {@code delay} is its key of that name, or nothing. */
  static String feed(Path port, String delay) {
    return "{length: link, link: {port: "
        + port
        + "}, profile: {framing: {kind: terminator, terminator: \"\\r\\n\"},"
        + " pattern: '(?P<value>[+-][0-9]+)', unit: MM}, mmPerCount: 0.1, silenceSeconds: 0"
        + delay
        + "}";
  }

  /** In real time, until the line is that many seconds old. */
  void runUntil(double seconds) throws IOException {
    double from = stream.seconds();
    long start = System.nanoTime() - putOffNanos;
    while (stream.seconds() < seconds) {
      stream.next();
      long due = start + Math.round((stream.seconds() - from) * 1e9);
      sendLate(due);
      await(due);
      send(counts, String.format(Locale.ROOT, "%+010d\r\n", stream.counts()));
      sent.add(new Sent(stream.seconds(), stream.depthNm(), stream.lengthNm()));
      String frame =
          String.format(
              Locale.ROOT, "%+07.3f;+000000000\r\n", stream.depthNm() / 1e6 + LineRig.ON_FLAT_MM);
      late.addLast(new Due(due + Math.round(delayMs * 1e6), frame));
    }
  }

  /** The depths that are due by then, each in its time. */
  private void sendLate(long until) throws IOException {
    while (!late.isEmpty() && late.getFirst().nanos() <= until) {
      Due next = late.removeFirst();
      await(next.nanos());
      send(depths, next.frame());
    }
  }

  /** Where the machine was busy all that comes is put off, since no line makes up for time. */
  private void await(long due) {
    long early = due + putOffNanos - System.nanoTime();
    if (early > 0) {
      LockSupport.parkNanos(early);
    } else {
      putOffNanos -= early;
    }
  }

  private static void send(PseudoTerminal to, String frame) throws IOException {
    int unused = to.write(frame.getBytes(StandardCharsets.US_ASCII));
  }
}
