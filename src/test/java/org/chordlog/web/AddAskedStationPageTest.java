package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.chordlog.capture.Direction;
import org.chordlog.decode.ModbusFrames;
import org.chordlog.decode.ModbusRegisters;
import org.chordlog.station.StationSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fitter adds indicators that answer when they are asked, each click counted. */
final class AddAskedStationPageTest extends BrowserTest {
  private static final String HELD = "4.3210";
  @TempDir Path directory;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static Fitter asks(Served served, String way) throws Exception {
    Fitter fitter = new Fitter(served, browser);
    fitter.go("/add-station.html");
    fitter.counts("[name='way']", 1);
    fitter.choose("How does it send?", way);
    return fitter;
  }

  @Test
  void aPolledIndicator() throws Exception {
    HandIndicator.Form form =
        (mm, asked) ->
            new String(asked, StandardCharsets.ISO_8859_1).contains("R")
                ? bytes(String.format(Locale.ROOT, "\u0002%+08.3f mm\r", mm))
                : new byte[0];
    try (HandIndicator indicator = new HandIndicator(0, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = asks(served, "when it is asked for its value");
      fitter.fill("Request", "R\\r");
      StationSettings station = fitter.adds(indicator, HELD, served, "polled-1");
      assertEquals("R\r", Objects.requireNonNull(station.profile().polling()).request());
      assertEquals(Direction.COUNTS_UP, station.direction());
    }
  }

  /** Registers 10 and 11 of device 3 hold the depth in counts of 0.001 mm, the low word first. */
  private static byte[] registers(double mm, byte[] asked) {
    if (asked.length != 8 || asked[0] != 3 || asked[1] != 3) {
      return new byte[0];
    }
    int first = (asked[2] & 0xFF) << 8 | (asked[3] & 0xFF);
    int count = asked[5];
    if (first + count > 16) {
      return ModbusFrames.withCrc(3, 0x83, 2);
    }
    int[] frame = new int[3 + 2 * count];
    frame[0] = 3;
    frame[1] = 3;
    frame[2] = 2 * count;
    int counts = (int) Math.round(mm * 1000);
    for (int i = 0; i < count; i++) {
      int word = first + i == 10 ? counts : first + i == 11 ? counts >> 16 : 7 * (first + i);
      frame[3 + 2 * i] = word >> 8 & 0xFF;
      frame[4 + 2 * i] = word & 0xFF;
    }
    return ModbusFrames.withCrc(frame);
  }

  @Test
  void aModbusIndicator() throws Exception {
    try (HandIndicator indicator = new HandIndicator(0, AddAskedStationPageTest::registers);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = asks(served, "as registers of Modbus RTU");
      fitter.fill("Device address", "3");
      StationSettings station = fitter.adds(indicator, HELD, served, "modbus-1");
      ModbusRegisters registers = Objects.requireNonNull(station.profile().modbus());
      assertEquals(10, registers.register());
      assertEquals(ModbusRegisters.Type.INT32, registers.type());
      assertTrue(registers.lowWordFirst());
    }
  }
}
