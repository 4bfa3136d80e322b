package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.Await;
import org.chordlog.Patience;
import org.chordlog.WaitingTest;
import org.chordlog.decode.ModbusFrames;
import org.chordlog.decode.ModbusRegisters;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.decode.Proposal;
import org.chordlog.decode.RegisterBlock;
import org.chordlog.link.SerialSettings;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;

/** A Modbus device on a pseudo-terminal: float in the input registers 4 and 5 of device 7. */
@Tag("slow")
final class RegisterSearchTest {
  private static final int DEVICE = 7;
  private static final int REGISTERS = 12;
  private static final int REQUEST_BYTES = 8;
  private PseudoTerminal terminal;
  private Thread thread;
  private volatile boolean stop;
  private volatile boolean standing;

  /** Requests left unanswered, counted from the third on. */
  private volatile int lost;

  private int requests;

  @BeforeEach
  void open() throws IOException {
    Assumptions.assumeTrue(PseudoTerminal.available(), "no pseudo-terminals here");
    terminal = PseudoTerminal.open();
    thread = new Thread(this::answer, "device");
    thread.start();
  }

  @AfterEach
  void close() throws Exception {
    stop = true;
    thread.join();
    terminal.close();
  }

  private void answer() {
    byte[] asked = new byte[64];
    while (!stop) {
      try {
        int last = terminal.read(asked) - REQUEST_BYTES; // where it was behind, two came
        if (last >= 0 && asked[last] == DEVICE && asked[last + 1] == 4 && !isLost()) {
          terminal.write(answer(asked[last + 3], asked[last + 5]));
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      LockSupport.parkNanos(1_000_000);
    }
  }

  private boolean isLost() {
    requests++;
    return requests > 2 && requests <= 2 + lost;
  }

  private byte[] answer(int first, int count) {
    if (first + count > REGISTERS) {
      return ModbusFrames.withCrc(DEVICE, 0x84, 2);
    }
    double mm = standing ? 5.123 : 3 + 6 * Math.sin(System.nanoTime() / 4e8);
    int bits = Float.floatToIntBits((float) (Math.round(mm * 1000) / 1000.0));
    int[] frame = new int[3 + 2 * count];
    frame[0] = DEVICE;
    frame[1] = 4;
    frame[2] = 2 * count;
    for (int i = 0; i < count; i++) {
      int word = first + i == 4 ? bits >>> 16 : first + i == 5 ? bits & 0xFFFF : 300 + i;
      frame[3 + 2 * i] = word >>> 8;
      frame[4 + 2 * i] = word & 0xFF;
    }
    return ModbusFrames.withCrc(frame);
  }

  private RegisterSearch.Found search(int device) throws Exception {
    RegisterBlock block = new RegisterBlock(device, Table.INPUT, 0, 20);
    double load = Patience.load();
    Duration answer = Duration.ofMillis(Math.round(400 * load));
    return new RegisterSearch(block, answer).search(link(), 4 * load);
  }

  private SerialSettings link() {
    return SerialSettings.of(terminal.path().toString());
  }

  @WaitingTest
  void theRegistersThatMoveAreProposedWithTheirType() throws Exception {
    RegisterSearch.Found found =
        Await.found(
            () -> Optional.of(search(DEVICE)).filter(RegisterSearchTest::proposes), () -> "");
    assertTrue(found.answered());
    assertEquals(REGISTERS, found.registers());
    Proposal best = found.proposals().best().get(0);
    ModbusRegisters registers = best.profile().modbus();
    assertEquals(
        new ModbusRegisters(DEVICE, Table.INPUT, 4, ModbusRegisters.Type.FLOAT32, false, 0, 0),
        registers);
    LiveReading.Channel read =
        Await.found(() -> Optional.of(live(best)).filter(channel -> channel.count() > 2), () -> "");
    assertTrue(Math.abs(read.lastNm()) < 10_000_000, read.toString());
  }

  private LiveReading.Channel live(Proposal proposed) throws Exception {
    return LiveReading.of(link(), List.of(proposed.profile()), 1).get(0).get(0);
  }

  /** A busy machine may read too few values while the plunger moves; then once more. */
  private static boolean proposes(RegisterSearch.Found found) {
    return !found.proposals().best().isEmpty();
  }

  @WaitingTest
  void anAnswerThatIsLostHidesNoRegister() throws Exception {
    lost = 1;
    assertEquals(REGISTERS, search(DEVICE).registers());
  }

  @WaitingTest
  void aStandingPlungerGivesNone() throws Exception {
    standing = true;
    RegisterSearch.Found found = search(DEVICE);
    assertTrue(found.proposals().best().isEmpty() && found.proposals().standsStill());
  }

  @WaitingTest
  void anotherDeviceDoesNotAnswer() throws Exception {
    assertFalse(search(9).answered());
  }
}
