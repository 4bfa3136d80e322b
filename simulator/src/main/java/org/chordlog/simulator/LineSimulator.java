package org.chordlog.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Plays a line through an indicator, in real time or faster. The encoder's counts are a second
 * value of the indicator's frame, or have a link of their own that sends them as lines.
 */
public final class LineSimulator implements Player {
  private static final long TICK_MS = 2;

  /** Of a busy machine. */
  private static final long MOST_LATE_NANOS = 50_000_000;

  private final LineScenario scenario;
  private final double speed;
  private final Wire wire;
  private final @Nullable Wire encoder;
  private final VirtualDevice device;
  private final VirtualLine line;
  private final Deque<LineScenario.PlannedFault> planned;
  private final Queue<LineFault> asked = new ConcurrentLinkedQueue<>();
  private volatile boolean stopped;

  private LineSimulator(
      LineScenario scenario,
      double speed,
      long seed,
      Wire wire,
      @Nullable Wire encoder,
      Consumer<LineTruth> truth) {
    this.scenario = scenario;
    this.speed = speed;
    this.wire = wire;
    this.encoder = encoder;
    device = new VirtualDevice(wire, scenario.indicator(), scenario.indicator().baudRate(), seed);
    line = new VirtualLine(scenario, LineErrors.NONE, seed + 2, truth);
    planned =
        new ArrayDeque<>(
            scenario.faults().stream()
                .sorted(Comparator.comparingDouble(LineScenario.PlannedFault::atSeconds))
                .toList());
  }

  /** On pseudo-terminals, under {@code link} if given, the encoder's under {@code link-length}. */
  public static LineSimulator onTerminal(
      LineScenario scenario,
      double speed,
      long seed,
      @Nullable Path link,
      Consumer<LineTruth> truth)
      throws IOException {
    boolean own = scenario.line().encoder().ownLink();
    Path lengthLink = link == null ? null : Path.of(link + "-length");
    Wire encoder = own ? TerminalWire.open(lengthLink) : null;
    return new LineSimulator(scenario, speed, seed, TerminalWire.open(link), encoder, truth);
  }

  /** On TCP ports of this computer, the encoder's next to it; 0 takes free ones. */
  public static LineSimulator onSocket(
      LineScenario scenario, double speed, long seed, int port, Consumer<LineTruth> truth)
      throws IOException {
    boolean own = scenario.line().encoder().ownLink();
    Wire encoder = own ? SocketWire.open(port == 0 ? 0 : port + 1) : null;
    return new LineSimulator(scenario, speed, seed, SocketWire.open(port), encoder, truth);
  }

  @Override
  public List<String> addresses() {
    return encoder == null ? List.of(wire.address()) : List.of(wire.address(), encoder.address());
  }

  @Override
  public void fault(String typed) {
    asked.add(LineFault.parse(typed));
  }

  @Override
  public void run() throws IOException, InterruptedException {
    while (!stopped && !wire.connected()) {
      TimeUnit.MILLISECONDS.sleep(TICK_MS);
    }
    long start = System.nanoTime();
    double period = 1 / scenario.indicator().valuesPerSecond();
    for (long i = 0; !stopped; i++) {
      long due = start + Math.round(i * period / speed * 1e9);
      long early = due - System.nanoTime();
      TimeUnit.NANOSECONDS.sleep(early);
      if (early < -MOST_LATE_NANOS) {
        start -= early; // no line runs faster to make up for time
      }
      obey(i * period);
      value(i * period);
    }
  }

  private void value(double seconds) throws IOException {
    double pushedIn = line.pushedInMm(seconds);
    long counts = line.counts(seconds);
    if (encoder == null) {
      device.send(pushedIn, counts, seconds);
      return;
    }
    device.send(pushedIn, seconds);
    String text = String.format(Locale.ROOT, "%+010d\r\n", counts);
    encoder.send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private void obey(double seconds) throws IOException {
    while (!planned.isEmpty() && planned.getFirst().atSeconds() <= seconds) {
      obey(LineFault.parse(planned.removeFirst().fault()), seconds);
    }
    for (LineFault next = asked.poll(); next != null; next = asked.poll()) {
      obey(next, seconds);
    }
    device.plugInWhenDue(seconds);
  }

  private void obey(LineFault fault, double seconds) {
    if (fault instanceof LineFault.OfDevice own) {
      device.apply(own.command(), seconds);
    } else if (fault instanceof LineFault.Stop stop) {
      line.stop(seconds, stop.seconds());
    } else if (fault instanceof LineFault.Jog jog) {
      line.jog(seconds, jog.backMm());
    } else if (fault instanceof LineFault.Swing swing) {
      line.swing(swing.mm());
    } else if (fault instanceof LineFault.OfLength length) {
      obey(length, seconds);
    }
  }

  private void obey(LineFault.OfLength fault, double seconds) {
    switch (fault) {
      case DEAD -> line.encoderDead(seconds, true);
      case ALIVE -> line.encoderDead(seconds, false);
      case REVERSED -> line.encoderReversed(true);
      case FORWARD -> line.encoderReversed(false);
    }
  }

  @Override
  public void close() {
    stopped = true;
    wire.close();
    if (encoder != null) {
      encoder.close();
    }
  }
}
