package org.chordlog.simulator;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** Plays a scenario through a device, in real time or faster, from its first opening on. */
public final class Simulator implements Player {
  private static final long TICK_NANOS = 2_000_000L;
  private static final double PRESSED_SHARE = 0.7;

  /** What a move is answered with, before the number of the first piece that is bent so. */
  public static final String MOVED = "moved from piece ";

  /** What {@code piece} is answered with, before the number of the newest piece. */
  public static final String NEWEST = "piece ";

  /** What {@code study} and {@code measure} are answered with. */
  public static final String STUDIED = "study ";

  private final Scenario scenario;
  private final double speed;
  private final Wire wire;
  private final VirtualMachine machine;
  private final VirtualPlunger plunger;
  private final VirtualDevice device;
  private final FaultPlan plan;
  private final Queue<FaultCommand> asked = new ConcurrentLinkedQueue<>();
  private volatile boolean stopped;
  private volatile StudyCrew crew;
  private double pressSeconds = Double.NaN;

  private Simulator(
      Scenario scenario,
      MoveScale scale,
      double speed,
      long seed,
      Wire wire,
      Consumer<Contact> truth) {
    this.scenario = scenario;
    this.speed = speed;
    this.wire = wire;
    plan = new FaultPlan(scenario.faults());
    crew = StudyCrew.usual(seed);
    device =
        new VirtualDevice(wire, scenario.indicator(), scenario.indicator().baudRate(), seed + 2);
    machine = new VirtualMachine(scenario, scale, seed);
    plunger =
        new VirtualPlunger(
            machine,
            new VirtualOperator(scenario, seed + 1),
            scenario.operator().flatSeconds() > 0,
            contact -> {
              pressSeconds = pressedAt(contact);
              truth.accept(contact);
            });
  }

  /** On a pseudo-terminal, under {@code link} if given. */
  public static Simulator onTerminal(
      Scenario scenario, double speed, long seed, @Nullable Path link, Consumer<Contact> truth)
      throws IOException {
    return onTerminal(scenario, MoveScale.EXACT, speed, seed, link, truth);
  }

  /** The same with the scale by which its rollers are moved. */
  public static Simulator onTerminal(
      Scenario scenario,
      MoveScale scale,
      double speed,
      long seed,
      @Nullable Path link,
      Consumer<Contact> truth)
      throws IOException {
    return new Simulator(scenario, scale, speed, seed, TerminalWire.open(link), truth);
  }

  /** On a TCP port of this computer; 0 takes a free one. */
  public static Simulator onSocket(
      Scenario scenario, double speed, long seed, int port, Consumer<Contact> truth)
      throws IOException {
    return onSocket(scenario, MoveScale.EXACT, speed, seed, port, truth);
  }

  /** The same with the scale by which its rollers are moved. */
  public static Simulator onSocket(
      Scenario scenario,
      MoveScale scale,
      double speed,
      long seed,
      int port,
      Consumer<Contact> truth)
      throws IOException {
    return new Simulator(scenario, scale, speed, seed, SocketWire.open(port), truth);
  }

  private static double pressedAt(Contact contact) {
    double rest = contact.restToSeconds() - contact.restFromSeconds();
    return contact.restFromSeconds() + PRESSED_SHARE * rest;
  }

  /** What the service has to open: a path, or host:port. */
  public String address() {
    return wire.address();
  }

  @Override
  public List<String> addresses() {
    return List.of(address());
  }

  @Override
  public void fault(String line) {
    fault(FaultCommand.parse(line));
  }

  /**
   * Also {@code move 0.05}: the middle roller, on its scale; answers from which piece on. {@code
   * piece}: answers which one is at the bridge. {@code study begin}: pieces of the job are left
   * alone, and {@code measure Ann, 3, start} has that person measure that place once, until {@code
   * study end}; {@code study flat}: until the next one the bridge stands on the flat; {@code study
   * done} answers how many were done.
   */
  @Override
  public String told(String line) {
    String[] words = line.trim().split("\\s+", -1);
    if (words[0].equalsIgnoreCase("study") || words[0].equalsIgnoreCase("measure")) {
      return STUDIED + studied(line.trim());
    }
    if (words[0].equalsIgnoreCase("piece")) {
      return NEWEST + machine.newest();
    }
    if (!words[0].equalsIgnoreCase("move")) {
      return Player.super.told(line);
    }
    try {
      return MOVED + machine.move(Check.finite("move", Double.parseDouble(words[1])));
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      throw new BadInput("move", "'" + line + "'", "lacks its number", "as: move 0.05");
    }
  }

  private String studied(String line) {
    String rest = line.substring(line.indexOf(' ') + 1).strip();
    if (line.toLowerCase(Locale.ROOT).startsWith("measure")) {
      plunger.add(StudyTask.parse(rest));
      return "measures " + rest;
    }
    if (rest.equals("done")) {
      return "done " + plunger.studied();
    }
    if (rest.equals("flat")) {
      plunger.flat();
      return rest;
    }
    if (!rest.equals("begin") && !rest.equals("end")) {
      throw new BadInput(
          "study", "'" + rest + "'", "is not known", "study begin, flat, done or end");
    }
    plunger.study(rest.equals("begin") ? crew : null);
    return rest;
  }

  /** Who measures in studies; before {@link #run()}. */
  public void crew(StudyCrew of) {
    crew = of;
  }

  /** Bends the pieces before that one unseen; before {@link #run()}. */
  public void goOnFrom(int piece) {
    machine.goOnFrom(piece);
  }

  /** Puts a fault on the device, soon; from any thread. */
  public void fault(FaultCommand command) {
    asked.add(command);
  }

  @Override
  public void run() throws IOException, InterruptedException {
    while (!stopped && !wire.connected()) {
      TimeUnit.NANOSECONDS.sleep(TICK_NANOS);
    }
    long start = System.nanoTime();
    double period = 1 / scenario.indicator().valuesPerSecond();
    for (long i = 0; !stopped; i++) {
      listenUntil(start, i * period);
      value(i * period);
    }
  }

  /** Waits for that second of the scenario, and meanwhile hears what the service asks. */
  private void listenUntil(long start, double seconds) throws IOException, InterruptedException {
    long due = start + Math.round(seconds / speed * 1e9);
    while (true) {
      double now = Math.min(seconds, (System.nanoTime() - start) * speed / 1e9);
      obey(now);
      device.listen(plunger.pushedInMm(now), now);
      long wait = due - System.nanoTime();
      if (wait <= 0 || stopped) {
        return;
      }
      TimeUnit.NANOSECONDS.sleep(device.listens() ? Math.min(wait, TICK_NANOS) : wait);
    }
  }

  private void obey(double seconds) throws IOException {
    plan.due(seconds).forEach(command -> device.apply(command, seconds));
    for (FaultCommand next = asked.poll(); next != null; next = asked.poll()) {
      device.apply(next, seconds);
    }
    device.plugInWhenDue(seconds);
  }

  private void value(double seconds) throws IOException {
    double pushedIn = plunger.pushedInMm(seconds);
    if (device.buttonOnly()) {
      if (seconds >= pressSeconds) {
        pressSeconds = Double.NaN;
        device.send(pushedIn, seconds);
      }
    } else if (!device.listens()) {
      device.send(pushedIn, seconds);
    }
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
