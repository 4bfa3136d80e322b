package org.chordlog.simulator;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.chordlog.decode.ModbusFrames;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An indicator with its faults, on a wire that only keeps what it carries. */
final class DeviceTest {
  /** Keeps what was sent; hands over what the test asks. */
  private static final class KeptWire implements Wire {
    private final ByteArrayOutputStream sent = new ByteArrayOutputStream();
    private byte[] asked = new byte[0];
    private int baud;
    private boolean plugged = true;

    @Override
    public String address() {
      return "kept";
    }

    @Override
    public boolean connected() {
      return plugged;
    }

    @Override
    public void send(byte[] bytes) {
      if (plugged) {
        sent.writeBytes(bytes);
      }
    }

    @Override
    public int receive(byte[] buffer) {
      System.arraycopy(asked, 0, buffer, 0, asked.length);
      int n = asked.length;
      asked = new byte[0];
      return n;
    }

    @Override
    public int baudRate() {
      return baud;
    }

    @Override
    public void unplug() {
      plugged = false;
    }

    @Override
    public void plugIn(boolean otherNumber) {
      plugged = true;
    }

    @Override
    public void close() {}

    String take() {
      String text = sent.toString(US_ASCII);
      sent.reset();
      return text;
    }
  }

  private final KeptWire wire = new KeptWire();

  private VirtualDevice device(String profile, int baud) {
    return new VirtualDevice(
        wire, new Scenario.Gauge(0.001, 0.003, 12.5, 5, 0.417, 0, 20, baud, profile), baud, 1);
  }

  private static FaultCommand fault(String line) {
    return FaultCommand.parse(line);
  }

  @Test
  void showsWhereThePlungerIs() throws IOException {
    device("signed-mm-lines", 0).send(7.73, 0);
    assertEquals("+03.147\r\n", wire.take());
  }

  @Test
  void aStuckValueStaysAndADriftingZeroWanders() throws IOException {
    VirtualDevice device = device("signed-mm-lines", 0);
    device.send(7.73, 0);
    device.apply(fault("stuck 1"), 1);
    device.send(0, 1);
    device.apply(fault("stuck 0"), 2);
    device.apply(fault("drift 60"), 2);
    device.send(7.73, 62);
    device.apply(fault("drift 0"), 62);
    device.send(7.73, 200);
    assertEquals("+03.147\r\n+03.147\r\n+03.207\r\n+03.207\r\n", wire.take());
  }

  @Test
  void lowBatteryAndInchesAreSaidByAnIndicatorThatHasWordsForThem() throws IOException {
    VirtualDevice device = device("status-lines", 0);
    device.apply(fault("inches 1"), 0);
    device.send(7.73, 0);
    device.apply(fault("battery 1"), 1);
    device.send(7.73, 1);
    assertEquals("S +00.12390 in\r\nL ------- mm\r\n", wire.take());
  }

  @Test
  void unpluggedItSaysNothingUntilItsTimeIsOver() throws IOException {
    VirtualDevice device = device("signed-mm-lines", 0);
    device.apply(fault("unplug 5"), 10);
    device.plugInWhenDue(14.9);
    device.send(0, 14.9);
    assertEquals("", wire.take());
    device.plugInWhenDue(15);
    device.send(0, 15);
    assertEquals("-04.583\r\n", wire.take());
  }

  @Test
  void lostDoubledAndNoisyBytesComeInTheSharesAskedFor() throws IOException {
    VirtualDevice device = device("signed-mm-lines", 0);
    int whole = 10_000 * 9;
    device.apply(fault("lose 10"), 0);
    assertEquals(0.9 * whole, lengthOf10000(device), 0.01 * whole);
    device.apply(fault("lose 0"), 0);
    device.apply(fault("double 10"), 0);
    assertEquals(1.1 * whole, lengthOf10000(device), 0.01 * whole);
    device.apply(fault("double 0"), 0);
    device.apply(fault("noise 1"), 0);
    assertEquals(whole, lengthOf10000(device));
    device.apply(fault("silence 1"), 0);
    assertEquals(0, lengthOf10000(device));
  }

  private int lengthOf10000(VirtualDevice device) throws IOException {
    wire.sent.reset();
    for (int i = 0; i < 10_000; i++) {
      device.send(5, i);
    }
    return wire.sent.size();
  }

  @Test
  void anotherRateThanItsOwnGarbles() throws IOException {
    VirtualDevice device = device("signed-mm-lines", 9600);
    wire.baud = 9600;
    device.send(0, 0);
    assertEquals("-04.583\r\n", wire.take());
    wire.baud = 19200;
    device.send(0, 0);
    assertTrue(!wire.take().equals("-04.583\r\n"));
  }

  @Test
  void aPolledOneAnswersEachRequestEvenInPieces() throws IOException {
    VirtualDevice device = device("polled-mm-lines", 0);
    wire.asked = "?".getBytes(US_ASCII);
    device.listen(5, 0);
    assertEquals("", wire.take());
    wire.asked = "\r".getBytes(US_ASCII);
    device.listen(5, 0);
    assertEquals("+00.417\r\n", wire.take());
  }

  /** Modbus application protocol V1.1b3: exception codes 1 (function) and 2 (address). */
  @Test
  void aSlaveAnswersItsRegistersAndRefusesOthers() throws IOException {
    VirtualDevice device = device("modbus-int32-microns", 0);
    assertArrayEquals(ModbusFrames.withCrc(1, 3, 4, 0, 0, 1, 161), asked(device, 1, 3, 0, 0, 0, 2));
    assertArrayEquals(ModbusFrames.withCrc(1, 0x83, 2), asked(device, 1, 3, 0, 9, 0, 2));
    assertArrayEquals(ModbusFrames.withCrc(1, 0x84, 1), asked(device, 1, 4, 0, 0, 0, 2));
    assertEquals(0, asked(device, 2, 3, 0, 0, 0, 2).length, "not its address");
  }

  private byte[] asked(VirtualDevice device, int... request) throws IOException {
    wire.sent.reset();
    wire.asked = ModbusFrames.withCrc(request);
    device.listen(5, 0);
    return wire.sent.toByteArray();
  }

  @ParameterizedTest
  @ValueSource(strings = {"explode 1", "noise", "noise 101", "noise x", ""})
  void aFaultThatIsNotKnownIsRefused(String line) {
    assertThrows(BadInput.class, () -> fault(line));
  }
}
