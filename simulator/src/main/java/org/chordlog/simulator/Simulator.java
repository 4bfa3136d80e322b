package org.chordlog.simulator;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Plays a scenario through a device, in real time or faster, from its first opening on. */
public final class Simulator implements AutoCloseable {
  private static final long OPENING_POLL_NANOS = 5_000_000L;
  private static final int UNREAD = 256;

  private final Scenario scenario;
  private final double speed;
  private final Wire wire;
  private final VirtualMachine machine;
  private final VirtualPlunger plunger;
  private final VirtualIndicator indicator;
  private volatile boolean stopped;

  private Simulator(
      Scenario scenario, double speed, long seed, Wire wire, Consumer<Contact> truth) {
    this.scenario = scenario;
    this.speed = speed;
    this.wire = wire;
    machine = new VirtualMachine(scenario, seed);
    plunger =
        new VirtualPlunger(
            machine,
            new VirtualOperator(scenario, seed + 1),
            scenario.operator().flatSeconds() > 0,
            truth);
    indicator = new VirtualIndicator(scenario.indicator(), seed + 2);
  }

  /** On a pseudo-terminal, under {@code link} if given. */
  public static Simulator onTerminal(
      Scenario scenario, double speed, long seed, @Nullable Path link, Consumer<Contact> truth)
      throws IOException {
    return new Simulator(scenario, speed, seed, TerminalWire.open(link), truth);
  }

  /** On a TCP port of this computer; 0 takes a free one. */
  public static Simulator onSocket(
      Scenario scenario, double speed, long seed, int port, Consumer<Contact> truth)
      throws IOException {
    return new Simulator(scenario, speed, seed, SocketWire.open(port), truth);
  }

  /** What the service has to open: a path, or host:port. */
  public String address() {
    return wire.address();
  }

  /** Bends the pieces before that one unseen; before {@link #run()}. */
  public void goOnFrom(int piece) {
    machine.goOnFrom(piece);
  }

  /** Plays until {@link #stop()}, or the thread is interrupted. */
  public void run() throws IOException, InterruptedException {
    while (!stopped && !wire.connected()) {
      pause(OPENING_POLL_NANOS);
    }
    long start = System.nanoTime();
    double period = 1 / scenario.indicator().valuesPerSecond();
    for (long i = 0; !stopped; i++) {
      double seconds = i * period;
      pause(start + Math.round(seconds / speed * 1e9) - System.nanoTime());
      wire.receive(new byte[UNREAD]);
      wire.send(line(indicator.steps(plunger.pushedInMm(seconds))));
    }
  }

  private static void pause(long nanos) throws InterruptedException {
    if (nanos > 0) {
      Thread.sleep(nanos / 1_000_000, (int) (nanos % 1_000_000));
    }
  }

  private byte[] line(long steps) {
    double mm = steps * scenario.indicator().resolutionMm();
    int decimals = (int) Math.ceil(-Math.log10(scenario.indicator().resolutionMm()) - 1e-9);
    int width = decimals + 4;
    return String.format(Locale.ROOT, "%+0" + width + "." + decimals + "f\r\n", mm)
        .getBytes(StandardCharsets.US_ASCII);
  }

  /** Ends {@link #run()} soon; from any thread. */
  public void stop() {
    stopped = true;
  }

  @Override
  public void close() {
    stop();
    wire.close();
  }
}
