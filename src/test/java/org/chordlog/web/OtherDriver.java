package org.chordlog.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.util.Map;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.openqa.selenium.Capabilities;
import org.openqa.selenium.net.PortProber;
import org.openqa.selenium.remote.RemoteWebDriver;

/** A browser with a driver that is a program of its own and ends with it. */
final class OtherDriver extends RemoteWebDriver {
  private final Process driver;

  private OtherDriver(Process driver, URI address, Capabilities wanted) throws IOException {
    super(address.toURL(), wanted, false);
    this.driver = driver;
  }

  static OtherDriver open(String program, Map<String, String> environment, Capabilities wanted) {
    int port = PortProber.findFreePort();
    ProcessBuilder command = new ProcessBuilder(program, "--port=" + port);
    command.environment().putAll(environment);
    command.redirectOutput(ProcessBuilder.Redirect.DISCARD);
    command.redirectError(ProcessBuilder.Redirect.DISCARD);
    try {
      Process driver = Children.start(command);
      Await.until(() -> listens(port));
      return new OtherDriver(driver, URI.create("http://127.0.0.1:" + port), wanted);
    } catch (Exception e) {
      throw new IllegalStateException(program + " does not open a browser", e);
    }
  }

  private static boolean listens(int port) {
    try (Socket one = new Socket(InetAddress.getLoopbackAddress(), port)) {
      return one.isConnected();
    } catch (IOException notYet) {
      return false;
    }
  }

  @Override
  public void quit() {
    super.quit();
    driver.destroy();
  }
}
