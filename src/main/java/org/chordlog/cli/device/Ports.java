package org.chordlog.cli.device;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.link.PortFinder;
import org.chordlog.link.PortInfo;
import org.chordlog.link.SerialLibrary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which serial ports are there. */
@Command(
    name = "ports",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Lists the serial ports of this computer: USB adapters, Bluetooth serial, built-in ones.",
      "Use a stable name in the station file: a path's number may change at replugging."
    })
public final class Ports implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    Optional<String> fault = SerialLibrary.fault();
    if (fault.isPresent()) {
      spec.commandLine().getErr().println(fault.get());
      return ExitCode.FAULT;
    }
    List<PortInfo> ports = PortFinder.list();
    PrintWriter out = spec.commandLine().getOut();
    out.println(json ? JsonText.of(ports) : text(ports));
    return ExitCode.WELL;
  }

  static String text(List<PortInfo> ports) {
    return ports.isEmpty()
        ? "No serial port. Plug the indicator in, or pair it over Bluetooth first."
        : ports.stream().map(Ports::text).collect(Collectors.joining("\n"));
  }

  private static String text(PortInfo port) {
    StringBuilder text = new StringBuilder(port.path());
    text.append("  ").append(port.description().isEmpty() ? "serial port" : port.description());
    if (port.usbVendorId() >= 0) {
      text.append(
          String.format(Locale.ROOT, "  USB %04x:%04x", port.usbVendorId(), port.usbProductId()));
    }
    if (!port.serialNumber().isEmpty()) {
      text.append("\n  serial:").append(port.serialNumber());
    }
    port.stableLinks().forEach(link -> text.append("\n  ").append(link));
    if (!port.alike().isEmpty()) {
      text.append("\n  ! an adapter of the same ids and serial number is at ")
          .append(String.join(", ", port.alike()))
          .append(
              ": neither `serial:` nor a name by id tells them apart; use its name by path, and"
                  + " leave each in its socket.");
    }
    return text.toString();
  }
}
