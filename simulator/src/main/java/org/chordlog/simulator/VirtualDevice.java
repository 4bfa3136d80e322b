package org.chordlog.simulator;

import java.io.IOException;
import java.util.Arrays;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.DecoderKind;
import org.chordlog.decode.FrameProfile;
import org.jspecify.annotations.Nullable;

/** The indicator as it is seen from the wire: its frames, its manners, and the faults put on it. */
final class VirtualDevice {
  private static final int UNREAD = 256;

  private final Wire wire;
  private final FrameWriter writer;
  private final FrameProfile profile;
  private final @Nullable Listener listener;
  private final VirtualIndicator indicator;
  private final WireFaults faults;
  private final int baudRate;
  private final byte[] buffer = new byte[UNREAD];
  private boolean lowBattery;
  private boolean inches;
  private boolean silent;
  private boolean otherNumber;
  private double pluggedInAtSeconds = Double.NaN;

  /** A rate of 0 never garbles. */
  VirtualDevice(Wire wire, Scenario.Gauge gauge, int baudRate, long seed) {
    this.wire = wire;
    this.baudRate = baudRate;
    BuiltInProfile kind = BuiltInProfile.named(gauge.profile());
    profile = kind.profile();
    writer = new FrameWriter(kind, gauge.resolutionMm());
    listener = listener();
    indicator = new VirtualIndicator(gauge, seed);
    faults = new WireFaults(seed + 1);
  }

  private @Nullable Listener listener() {
    if (profile.kind() == DecoderKind.MODBUS_RTU) {
      return new SlaveDevice(writer);
    }
    return profile.polling() == null ? null : new PolledDevice(writer, profile.polling().request());
  }

  /** Whether it answers requests instead of sending by itself. */
  boolean listens() {
    return listener != null;
  }

  /** Whether it sends only when its button is pressed. */
  boolean buttonOnly() {
    return profile.buttonOnly();
  }

  void send(double pushedInMm, double seconds) throws IOException {
    long shown = indicator.shownNm(pushedInMm, seconds);
    put(lowBattery ? writer.lowBattery() : writer.frame(shown, inches));
  }

  /** The value and an encoder's counts in one frame, whatever the profile. */
  void send(double pushedInMm, long counts, double seconds) throws IOException {
    put(writer.withCounts(indicator.shownNm(pushedInMm, seconds), counts));
  }

  /** Takes what came in and answers it, if this is an indicator that does. */
  void listen(double pushedInMm, double seconds) throws IOException {
    int n = wire.receive(buffer);
    if (n > 0 && listener != null) {
      put(listener.answer(Arrays.copyOf(buffer, n), () -> indicator.shownNm(pushedInMm, seconds)));
    }
  }

  private void put(byte[] frame) throws IOException {
    if (silent || frame.length == 0) {
      return;
    }
    boolean otherRate = baudRate > 0 && wire.baudRate() > 0 && wire.baudRate() != baudRate;
    wire.send(otherRate ? faults.garbled(frame) : faults.through(frame));
  }

  void apply(FaultCommand command, double seconds) {
    double amount = command.amount();
    boolean on = amount > 0;
    switch (command.kind()) {
      case UNPLUG, RENUMBER -> unplug(command, seconds);
      case NOISE -> faults.noise(amount / 100);
      case LOSE -> faults.lost(amount / 100);
      case DOUBLE -> faults.doubled(amount / 100);
      case STUCK -> indicator.stuck(on);
      case DRIFT -> indicator.drift(amount / 1000, seconds);
      case BATTERY -> lowBattery = on;
      case INCHES -> inches = on;
      case SILENCE -> silent = on;
    }
  }

  private void unplug(FaultCommand command, double seconds) {
    wire.unplug();
    otherNumber = command.kind() == FaultCommand.Kind.RENUMBER;
    pluggedInAtSeconds = seconds + command.amount();
  }

  /** Comes back when its time is over. */
  void plugInWhenDue(double seconds) throws IOException {
    if (seconds >= pluggedInAtSeconds) {
      pluggedInAtSeconds = Double.NaN;
      wire.plugIn(otherNumber);
    }
  }
}
