package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * Makes the pictures of the README from the demo as it is: the station page and a job's chart. Run
 * by {@code mvn -Ppictures verify}; the folder is its argument.
 */
final class ReadmePictures {
  private static final int WIDTH = 1024;
  private static final int HEIGHT = 768;

  /** The rollers creep by then, and the station advises a correction. */
  private static final int ADVISED = 62;

  /** What the correction before piece 86 did can be seen by then. */
  private static final int CORRECTED = 100;

  private final ChromeDriver page;
  private final URI address;
  private final Path folder;

  private ReadmePictures(ChromeDriver page, URI address, Path folder) {
    this.page = page;
    this.address = address;
    this.folder = folder;
  }

  public static void main(String... arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Path scratch = Files.createTempDirectory("pictures");
    Process demo = demo(scratch.resolve("data"));
    ChromeDriver browser = Browser.open(scratch.resolve("browser"), WIDTH, HEIGHT);
    try {
      new ReadmePictures(browser, address(demo), folder).take();
    } finally {
      browser.quit();
      demo.destroy();
    }
  }

  private static Process demo(Path data) throws IOException {
    List<String> command = ServiceProcess.java(System.getProperty("java.class.path"));
    command.addAll(List.of("org.chordlog.Main", "demo", "--speed", "6", "--port", "0"));
    command.addAll(List.of("--data", data.toString()));
    return Children.start(
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT));
  }

  private static URI address(Process demo) throws IOException {
    BufferedReader out = demo.inputReader(StandardCharsets.UTF_8);
    String line = out.readLine();
    while (!line.contains("Chordlog is at ")) {
      line = out.readLine();
    }
    return URI.create(line.replace("Chordlog is at ", "").strip());
  }

  private void take() throws Exception {
    screen(HEIGHT);
    page.executeCdpCommand("Emulation.setScrollbarsHidden", Map.of("hidden", true));
    measured(1, ADVISED);
    station();
    measured(ADVISED, CORRECTED);
    chart();
  }

  /** Waits for each by itself, so that the patience is that of one. */
  private void measured(int first, int last) throws Exception {
    for (int piece = first; piece <= last; piece++) {
      int wanted = piece;
      Await.until(() -> pieces() >= wanted);
    }
  }

  private void screen(int height) {
    page.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", WIDTH, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  private int pieces() throws Exception {
    return overview().at("/station/piece").asInt();
  }

  private JsonNode overview() throws Exception {
    URI of = address.resolve("/api/stations/demo/overview");
    try (var body = of.toURL().openStream()) {
      return new ObjectMapper().readTree(body);
    }
  }

  private void station() throws Exception {
    page.get(address.resolve("/jobs.html").toString());
    page.executeScript("localStorage.setItem('flash', 'off')");
    page.get(address.resolve("/station.html?station=demo").toString());
    Await.until(
        () -> !page.findElements(By.cssSelector(".recent svg circle, .recent svg path")).isEmpty());
    byte[] picture;
    String before;
    do { // the next piece may come while it is taken
      Await.until(() -> said().startsWith("Good"));
      before = said();
      picture = page.getScreenshotAs(OutputType.BYTES);
    } while (!said().equals(before) || !before.startsWith("Good"));
    Files.write(folder.resolve("station.png"), picture);
  }

  /** The verdict, and of which piece it is. */
  private String said() {
    return page.findElements(By.cssSelector(".word, .of-piece")).stream()
        .map(WebElement::getText)
        .collect(Collectors.joining("\n"));
  }

  private void chart() throws Exception {
    long job = overview().at("/job/id").asLong();
    screen(2 * HEIGHT);
    page.get(address.resolve("/job.html?job=" + job).toString());
    By charts = By.cssSelector("section[aria-label='Control charts'] .picture svg");
    Await.until(() -> !page.findElements(charts).isEmpty());
    Files.write(
        folder.resolve("chart.png"), page.findElement(charts).getScreenshotAs(OutputType.BYTES));
  }
}
