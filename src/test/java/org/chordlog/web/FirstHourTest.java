package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.harness.ServiceProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From {@code chordlog serve} with nothing at all to the first piece, each click counted. */
final class FirstHourTest extends BrowserTest {
  /** So many clicks at most, and so many fields typed into; what is offered already is left. */
  private static final int MOST_CLICKS = 10;

  private static final int MOST_FIELDS = 11;

  @TempDir Path directory;
  private int clicks;
  private int fields;

  @Test
  void someoneNewMeasuresAPiece() throws Exception {
    Process service = serve();
    try (TerminalIndicator indicator = new TerminalIndicator(directory.resolve("indicator"));
        BufferedReader out = service.inputReader(StandardCharsets.UTF_8)) {
      String said = out.readLine();
      String address = said.substring(said.indexOf("http"), said.lastIndexOf('/') + 1);
      Visitor visitor = new Visitor(URI.create(address), browser, "");
      findsTheIndicator(visitor, indicator);
      namesTheStation(visitor);
      opensTheFirstJob(visitor);
      setsZero(visitor, indicator);
      measuresTheFirstPiece(visitor, indicator);
      visitor.leavesNothingOnTheConsole();
    } finally {
      service.destroy();
      service.waitFor();
    }
    System.out.println("First hour: " + clicks + " clicks, " + fields + " fields");
    assertTrue(clicks <= MOST_CLICKS, clicks + " clicks");
    assertTrue(fields <= MOST_FIELDS, fields + " fields");
  }

  /** As a user starts it, with a home that holds nothing. */
  private Process serve() throws IOException {
    List<String> command =
        ServiceProcess.briefJava(System.getProperty("java.class.path"), "-Duser.home=" + directory);
    command.addAll(List.of("org.chordlog.Main", "serve", "--port", "0"));
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.environment().remove("XDG_DATA_HOME");
    return Children.start(builder.redirectError(directory.resolve("service.log").toFile()));
  }

  private void findsTheIndicator(Visitor visitor, TerminalIndicator indicator) throws Exception {
    visitor.go("/");
    visitor.sees("main", "from here to the first piece in five steps");
    visitor.findsNothingGrave();
    click(visitor, "Find the indicator");
    visitor.sees("h1", "Add a station");
    visitor.counts("[name='port']", 1);
    plugsACableIn(visitor);
    visitor.find("[name='port']").sendKeys(indicator.port().toString());
    fields++;
    click(visitor, "Listen here");
    visitor.sees("dialog", "Who is at this screen?");
    type(visitor, "Name or initials", "Nora");
    click(visitor, "Continue");
    movesThePlungerUntil(
        indicator, () -> visitor.count(".reads-now") > 0 && visitor.count("#heard progress") == 0);
    visitor.click("#heard tbody tr:first-child button");
    clicks++;
    indicator.show(TerminalIndicator.FREE_MM);
    click(visitor, "Watch for 5 seconds");
    pushesThePlungerIn(visitor, indicator);
    indicator.show(TerminalIndicator.FREE_MM);
  }

  /** While the page is open; a port of that name is told to it, in place of a real cable. */
  private static void plugsACableIn(Visitor visitor) throws Exception {
    browser.executeScript(
        """
        const port = { path: "/dev/ttyTEST", stableLinks: [], alike: [], description: "cable" };
        const asked = window.fetch;
        window.fetch = (at, how) =>
          String(at.url ?? at).endsWith("api/ports")
            ? Promise.resolve(Response.json([port]))
            : asked(at, how);
        """);
    visitor.sees("#ports .choices", "/dev/ttyTEST");
  }

  /** As the page asks for, up and down. */
  private static void movesThePlungerUntil(TerminalIndicator indicator, Callable<Boolean> heard)
      throws Exception {
    AtomicInteger turn = new AtomicInteger();
    Await.until(
        () -> {
          indicator.show(turn.incrementAndGet() % 40 / 7.0 - 2);
          return heard.call();
        });
  }

  /** Slowly, and once more where the page says that it saw too little. */
  private static void pushesThePlungerIn(Visitor visitor, TerminalIndicator indicator)
      throws Exception {
    AtomicInteger steps = new AtomicInteger();
    Await.until(
        () -> {
          indicator.show(TerminalIndicator.FREE_MM + 0.02 * (steps.incrementAndGet() % 500));
          String said = visitor.text("#pushed");
          if (said.contains("hardly moved")) {
            steps.set(0);
            visitor.press("Watch for 5 seconds");
          }
          return said.contains("Pushing in counts up");
        });
  }

  private void namesTheStation(Visitor visitor) throws Exception {
    visitor.sees("#form", "Name of the station");
    visitor.findsNothingGrave();
    type(visitor, "Machine", "section roller");
    type(visitor, "Permissible error ±", "0.003");
    type(visitor, "Travel", "12.5");
    type(visitor, "Span", "200");
    click(visitor, "Add the station");
    visitor.sees("#title", "bench-1 · section roller");
    visitor.sees(".now", "Now: ");
  }

  private void opensTheFirstJob(Visitor visitor) throws Exception {
    click(visitor, "Choose the job");
    visitor.sees("h1", "New job");
    visitor.findsNothingGrave();
    type(visitor, "Order", "Garden arch");
    type(visitor, "Outside diameter", "42.4");
    type(visitor, "Wall", "2.6");
    type(visitor, "Target radius", "1800");
    type(visitor, "Tolerance ±", "15");
    click(visitor, "Create job");
    visitor.sees("#job", "Garden arch");
  }

  private void setsZero(Visitor visitor, TerminalIndicator indicator) throws Exception {
    indicator.show(0);
    visitor.sees(".now", "0.000");
    click(visitor, "Zero");
    visitor.sees("dialog", "Set zero on the flat");
    visitor.sees(".live-line", "Standing still");
    visitor.pressUntil("Set zero", () -> visitor.count("dialog[open]") == 0);
    clicks++;
    visitor.sees(".word", "Lift off");
    visitor.sees(".note", "Zero set");
  }

  /**
   * On the outer face: an outer radius of 1821.2 mm over a span of 200 mm has a sagitta of 2.748.
   */
  private static void measuresTheFirstPiece(Visitor visitor, TerminalIndicator indicator)
      throws Exception {
    indicator.show(TerminalIndicator.FREE_MM);
    visitor.sees(".now", "−5.000 mm, in free air");
    indicator.show(2.748);
    visitor.sees(".word", "Good");
    visitor.sees(".figure", "1799.7");
    visitor.sees(".of-piece", "Next: piece 2");
  }

  private void click(Visitor visitor, String words) throws Exception {
    visitor.press(words);
    clicks++;
  }

  private void type(Visitor visitor, String label, String text) throws Exception {
    visitor.fill(label, text);
    fields++;
  }
}
