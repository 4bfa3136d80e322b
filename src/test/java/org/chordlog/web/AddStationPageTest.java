package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.capture.Direction;
import org.chordlog.decode.ModbusFrames;
import org.chordlog.decode.ModbusRegisters;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus.LinkState;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** A fitter adds indicators of unknown form on a pseudo-terminal, each click counted. */
final class AddStationPageTest extends BrowserTest {
  private static final String HELD = "4.3210";
  @TempDir Path directory;

  /** One fitter at the page; counts presses and choices, not what is typed. */
  private static final class Fitter extends Visitor {
    int clicks;

    Fitter(Served served) {
      super(served, browser, "Carl");
    }

    @Override
    void press(String words) throws Exception {
      super.press(words);
      clicks++;
    }

    void choose(String label, String words) throws Exception {
      new Select(field(label)).selectByVisibleText(words);
      clicks++;
    }

    void listenAt(HandIndicator indicator) throws Exception {
      find("[name='port']").sendKeys(indicator.port());
      press("Listen here");
    }

    /** Picks the first line that reads what the indicator shows while it is held. */
    void picks(HandIndicator indicator, String shown) throws Exception {
      Await.until(() -> count(".reads-now") > 0 && count("#heard progress") == 0);
      indicator.hold();
      Await.until(() -> line(shown) != null);
      findsNothingGrave();
      Objects.requireNonNull(line(shown)).findElement(By.tagName("button")).click();
      clicks++;
    }

    private @Nullable WebElement line(String shown) {
      return page.findElements(By.cssSelector("#heard tbody tr")).stream()
          .filter(row -> (row.getText().replaceAll("\\s+", " ") + " ").contains(shown + " "))
          .findFirst()
          .orElse(null);
    }

    void pushesIn(HandIndicator indicator) throws Exception {
      indicator.letOut();
      press("Watch for 5 seconds");
      indicator.push();
      sees("#pushed", "ushing in counts");
    }

    void names(String name) throws Exception {
      Await.until(() -> count("[name='machine']") == 1);
      fill("Name of the station", name);
      fill("Machine", "roller 2");
      fill("Step", "0.001");
      fill("Permissible error ±", "0.003");
      fill("Travel", "12.5");
      fill("Name", "bridge 200");
      fill("Span", "200");
      fill("Standard uncertainty of the span", "0.02");
      findsNothingGrave();
      press("Add the station");
      sees("#title", name);
      sees(".now", "Now: ");
    }
  }

  private StationSettings added(Served served, Fitter fitter, String name) throws Exception {
    fitter.leavesNothingOnTheConsole();
    Await.until(() -> served.stations.status(name).link() == LinkState.OPEN);
    Await.until(() -> served.stations.status(name).counts().samples() > 10);
    System.out.println(name + ": " + fitter.clicks + " clicks");
    assertTrue(fitter.clicks <= 8, name + ": " + fitter.clicks + " clicks");
    return StationFile.read(served.stationFile).stream()
        .filter(station -> station.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
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
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      Await.until(() -> fitter.count("[name='way']") == 1);
      fitter.choose("How does it send?", "when it is asked for its value");
      fitter.fill("Request", "R\\r");
      fitter.listenAt(indicator);
      fitter.picks(indicator, HELD);
      fitter.pushesIn(indicator);
      fitter.names("polled-1");
      StationSettings station = added(served, fitter, "polled-1");
      assertEquals("R\r", assertPresent(station.profile().polling()).request());
      assertEquals(Direction.COUNTS_UP, station.direction());
    }
  }

  private static <T> T assertPresent(@Nullable T value) {
    assertNotNull(value);
    return Objects.requireNonNull(value);
  }

  private static String chosen(Fitter fitter, String label) throws Exception {
    return new Select(fitter.field(label)).getFirstSelectedOption().getText();
  }

  @Test
  void twoChannelsAsOneDepth() throws Exception {
    HandIndicator.Form form =
        (mm, asked) -> bytes(String.format(Locale.ROOT, "A:%+07.3f B:%+07.3f\r\n", mm, -0.25 * mm));
    try (HandIndicator indicator = new HandIndicator(50, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.picks(indicator, HELD);
      fitter.pushesIn(indicator);
      fitter.choose("Depth is", "channel 2 less channel 1");
      assertEquals("counts down", chosen(fitter, "Pushing the plunger in"));
      fitter.choose("Depth is", "channel 1 less channel 2");
      fitter.names("two-1");
      StationSettings station = added(served, fitter, "two-1");
      assertEquals(Direction.COUNTS_UP, station.direction());
      assertEquals(1, assertPresent(station.combine()).first());
      assertEquals(2, assertPresent(station.combine()).second());
    }
  }

  @Test
  void aReversedIndicatorThatSendsOnceASecond() throws Exception {
    HandIndicator.Form form = (mm, asked) -> bytes(String.format(Locale.ROOT, "%9.3f\r\n", -mm));
    try (HandIndicator indicator = new HandIndicator(1000, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.picks(indicator, "−" + HELD);
      fitter.pushesIn(indicator);
      assertEquals("counts down", chosen(fitter, "Pushing the plunger in"));
      fitter.names("reversed-1");
      fitter.sees(".now", "indicator shows −4.321");
      StationSettings station = added(served, fitter, "reversed-1");
      assertEquals(Direction.COUNTS_DOWN, station.direction());
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
    try (HandIndicator indicator = new HandIndicator(0, AddStationPageTest::registers);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      Await.until(() -> fitter.count("[name='way']") == 1);
      fitter.choose("How does it send?", "as registers of Modbus RTU");
      fitter.fill("Device address", "3");
      fitter.listenAt(indicator);
      fitter.picks(indicator, HELD);
      fitter.pushesIn(indicator);
      fitter.names("modbus-1");
      StationSettings station = added(served, fitter, "modbus-1");
      ModbusRegisters registers = assertPresent(station.profile().modbus());
      assertEquals(10, registers.register());
      assertEquals(ModbusRegisters.Type.INT32, registers.type());
      assertTrue(registers.lowWordFirst());
    }
  }

  /** A hand that presses the data button every 0.6 s, wherever the plunger is. */
  @Test
  void anIndicatorThatSendsWhenItsDataButtonIsPressed() throws Exception {
    HandIndicator.Form form = (mm, asked) -> bytes(String.format(Locale.ROOT, "%9.3f\r\n", mm));
    try (HandIndicator indicator = new HandIndicator(600, form);
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      Await.until(() -> fitter.count("[name='way']") == 1);
      fitter.choose("How does it send?", "when its data button is pressed");
      fitter.listenAt(indicator);
      fitter.sees("#heard", "pick the line");
      fitter.findsNothingGrave();
      fitter.click("#heard tbody button");
      fitter.clicks++;
      fitter.sees("#pushed", "press the data button with the plunger out");
      fitter.pushesIn(indicator);
      fitter.names("button-1");
      StationSettings station = added(served, fitter, "button-1");
      assertEquals(Direction.COUNTS_UP, station.direction());
      assertTrue(
          station.profile().buttonOnly() && Boolean.TRUE.equals(station.capture().everyFrame()));
      assertEquals(0, station.silenceSeconds());
    }
  }

  @Test
  void nothingIsProposedWhileThePlungerStands() throws Exception {
    try (HandIndicator indicator =
            new HandIndicator(50, (mm, asked) -> bytes(mm > 0 ? "+1.001\r\n" : "+1.002\r\n"));
        Served served = new Served(directory.resolve("data"))) {
      Fitter fitter = new Fitter(served);
      fitter.go("/add-station.html");
      fitter.listenAt(indicator);
      fitter.sees("#heard", "The plunger was not seen to move");
      assertEquals(0, fitter.count("#heard table"));
      fitter.leavesNothingOnTheConsole();
    }
  }
}
