package org.chordlog.web;

import java.util.List;
import java.util.Map;
import org.openqa.selenium.ImmutableCapabilities;
import org.openqa.selenium.remote.RemoteWebDriver;

/** The engine of many browsers of desks. Its driver, {@code geckodriver}, is on the path. */
final class Gecko {
  private Gecko() {}

  static RemoteWebDriver open() {
    Map<String, ?> options =
        Map.of("args", List.of("-headless"), "prefs", Map.of("devtools.jsonview.enabled", false));
    Map<String, ?> wanted = Map.of("browserName", "firefox", "moz:firefoxOptions", options);
    return OtherDriver.open("geckodriver", Map.of(), new ImmutableCapabilities(wanted));
  }
}
