package org.chordlog.web;

import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.chordlog.harness.Children;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.ImmutableCapabilities;
import org.openqa.selenium.remote.RemoteWebDriver;

/** The engine of tablets whose maker allows no other, on a display that nobody sees. */
final class WebKit {
  private static final Path DRIVER = Path.of("/usr/bin/WebKitWebDriver");
  private static final Path DISPLAY = Path.of("/usr/bin/Xvfb");
  private static @Nullable String display;

  private WebKit() {}

  static RemoteWebDriver open() {
    demand();
    try {
      Map<String, ?> options =
          Map.of("binary", browser().toString(), "args", List.of("--automation"));
      Map<String, ?> wanted =
          Map.of("browserName", "MiniBrowser", "webkitgtk:browserOptions", options);
      return OtherDriver.open(
          DRIVER.toString(), Map.of("DISPLAY", display()), new ImmutableCapabilities(wanted));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One for all browsers of this process. */
  private static synchronized String display() throws IOException {
    String there = display == null ? newDisplay() : display;
    display = there;
    return there;
  }

  /** It says which number it has got once it is there. */
  private static String newDisplay() throws IOException {
    List<String> screen = List.of("-nolisten", "tcp", "-screen", "0", "2000x1200x24");
    ProcessBuilder command = new ProcessBuilder(DISPLAY.toString(), "-displayfd", "1");
    command.command().addAll(screen);
    command.redirectError(ProcessBuilder.Redirect.DISCARD);
    Process screenless = Children.start(command);
    return ":" + screenless.inputReader(StandardCharsets.UTF_8).readLine();
  }

  private static Path browser() throws IOException {
    try (Stream<Path> kinds = Files.find(Path.of("/usr/lib"), 3, WebKit::isBrowser)) {
      return kinds.findFirst().orElseThrow(() -> new IOException("no MiniBrowser in /usr/lib"));
    }
  }

  private static boolean isBrowser(Path file, Object unused) {
    return file.endsWith("webkit2gtk-4.1/MiniBrowser");
  }

  /** Skipped, loudly, only where it is not installed and this is not a CI run. */
  private static void demand() {
    if (Files.isExecutable(DRIVER) && Files.isExecutable(DISPLAY)) {
      return;
    }
    String missing = "NO TEST IN THE ENGINE OF TABLETS: install webkit2gtk-driver and xvfb";
    if (System.getenv("CI") != null) {
      throw new AssertionError(missing);
    }
    System.err.println(missing);
    abort(missing);
  }
}
