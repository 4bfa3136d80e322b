package org.chordlog.station;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import org.chordlog.decode.Arrival;
import org.chordlog.decode.Polling;
import org.chordlog.decode.Proposal;
import org.chordlog.decode.Proposals;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.SerialSettings.Parity;
import org.chordlog.link.SerialSettings.StopBits;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** Tries rates and framings of a serial port until what comes makes sense. */
public final class PortSearch {
  /** Common ones first: common practice, no source. */
  private static final List<Integer> RATES =
      List.of(9600, 115_200, 4800, 19_200, 38_400, 57_600, 2400, 1200);

  private static final List<Parity> PARITIES = List.of(Parity.NONE, Parity.EVEN, Parity.ODD);
  private static final double SURE = 0.7;
  private static final double PATIENCE = 5;
  private static final int ENOUGH_BURSTS = 10;
  private static final int ENOUGH_BYTES = 500;
  private static final long BURST_NANOS = 50_000_000;

  /**
   * What came at those settings, and what it may be, the best first.
   *
   * @param standsStill whether nothing is proposed because the plunger was not seen to move
   * @param likeness 0 to 1: how much it looks like an indicator at the right rate
   */
  public record Heard(
      LinkSettings link,
      List<Arrival> stream,
      List<Proposal> proposals,
      boolean standsStill,
      double likeness) {
    public Heard {
      stream = List.copyOf(stream);
      proposals = List.copyOf(proposals);
    }

    static Heard of(LinkSettings link, List<Arrival> stream, @Nullable Polling polling) {
      Proposals seen = Proposals.seen(stream, polling);
      return new Heard(link, stream, seen.best(), seen.standsStill(), seen.likeness());
    }

    public long bytes() {
      return stream.stream().mapToLong(a -> a.bytes().length).sum();
    }
  }

  private final Listening listening;
  private final @Nullable Polling polling;
  private final double secondsEach;

  public PortSearch(Listening listening, @Nullable Polling polling, double secondsEach) {
    this.listening = listening;
    this.polling = polling;
    this.secondsEach = secondsEach;
  }

  /**
   * All settings that are worth trying on that port. Eight bits without parity also catch seven
   * bits with one, which a profile then masks.
   */
  public static List<LinkSettings> settings(SerialSettings port) {
    List<LinkSettings> all = new ArrayList<>();
    for (Parity parity : PARITIES) {
      RATES.forEach(rate -> all.add(port.with(rate, 8, parity, StopBits.ONE)));
    }
    return all;
  }

  /** All settings worth trying for what a person calls a port: a path, COM1…, or host:port. */
  public static List<LinkSettings> settings(String port) {
    int colon = port.lastIndexOf(':');
    if (SerialSettings.namesPort(port)) {
      return settings(SerialSettings.of(port));
    }
    if (colon > 0 && port.substring(colon + 1).matches("[0-9]{1,5}")) {
      int number = Integer.parseInt(port.substring(colon + 1));
      Check.within("port", number, 1, 65_535);
      return List.of(new TcpSettings(port.substring(0, colon), number));
    }
    throw new BadInput(
        "port",
        port,
        "does not name a port",
        "the path of a device that is there, COM1…, serial:NUMBER, description:TEXT, or HOST:PORT");
  }

  /**
   * Tries them in turn until what comes looks like an indicator, telling each result; answers the
   * best. A port on which nothing at all comes is given up after the first pass over the rates.
   */
  public Heard search(List<LinkSettings> settings, BiConsumer<LinkSettings, Heard> tried)
      throws LinkException {
    @Nullable Heard best = null;
    boolean silent = true;
    for (int i = 0; i < settings.size() && !(silent && i >= RATES.size()); i++) {
      Heard heard = hear(settings.get(i));
      tried.accept(heard.link(), heard);
      silent &= heard.stream().isEmpty();
      best = best == null || heard.likeness() > best.likeness() ? heard : best;
      if (best.likeness() >= SURE) {
        break;
      }
    }
    if (best == null) {
      throw new IllegalArgumentException("no settings to try");
    }
    return best;
  }

  /** Listens once. */
  public Heard hear(LinkSettings link) throws LinkException {
    return Heard.of(link, listening.listen(link, secondsEach), polling);
  }

  /**
   * Listens while the plunger is moved: up to five times as long where few frames come, as from an
   * indicator that sends once a second or when its button is pressed.
   */
  public Heard hearMoved(LinkSettings link) throws LinkException {
    List<Arrival> stream =
        listening.listen(link, secondsEach, PATIENCE * secondsEach, PortSearch::isEnough);
    return Heard.of(link, stream, polling);
  }

  private static boolean isEnough(List<Arrival> stream) {
    int bursts = 0;
    int bytes = 0;
    long last = Long.MIN_VALUE / 2;
    for (Arrival arrival : stream) {
      bytes += arrival.bytes().length;
      bursts += arrival.monotonicNanos() - last > BURST_NANOS ? 1 : 0;
      last = arrival.monotonicNanos();
    }
    return bursts >= ENOUGH_BURSTS || bytes >= ENOUGH_BYTES;
  }
}
