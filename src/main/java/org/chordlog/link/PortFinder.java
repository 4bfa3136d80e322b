package org.chordlog.link;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.chordlog.link.LinkException.Reason;

/** Finds serial ports: lists them, and turns a port's name in the settings into its device. */
public final class PortFinder {
  static final String BY_SERIAL = "serial:";
  static final String BY_DESCRIPTION = "description:";

  /** What the library says of a port that it knows nothing of. */
  private static final Set<String> SAYS_NOTHING = Set.of("Unknown", "User-Specified Port");

  private static final Path LINKS = Path.of("/dev/serial");

  private PortFinder() {}

  /** All serial ports, by path. Probes devices: not for a busy loop. */
  public static synchronized List<PortInfo> list() {
    List<PortInfo> found =
        Arrays.stream(SerialPort.getCommPorts())
            .map(PortFinder::describe)
            .sorted((a, b) -> a.path().compareTo(b.path()))
            .toList();
    return found.stream().map(port -> port.among(found)).toList();
  }

  static Path resolve(String port) throws LinkException {
    if (port.startsWith(BY_SERIAL)) {
      String number = port.substring(BY_SERIAL.length());
      return only(port, found -> found.serialNumber().equals(number));
    }
    if (port.startsWith(BY_DESCRIPTION)) {
      String text = port.substring(BY_DESCRIPTION.length()).toLowerCase(Locale.ROOT);
      return only(port, found -> found.description().toLowerCase(Locale.ROOT).contains(text));
    }
    return real(port);
  }

  private static Path real(String port) throws LinkException {
    Path path = Path.of(port);
    if (!port.startsWith("/")) {
      return path;
    }
    try {
      return path.toRealPath();
    } catch (IOException e) {
      throw PortFaults.missing(port);
    }
  }

  private static Path only(String asked, Predicate<PortInfo> wanted) throws LinkException {
    List<PortInfo> found = list().stream().filter(wanted).toList();
    if (found.isEmpty()) {
      throw PortFaults.missing(asked);
    }
    if (found.size() > 1) {
      throw new LinkException(
          Reason.REFUSED,
          asked
              + " fits several ports: "
              + String.join(", ", found.stream().map(PortInfo::path).toList())
              + ". Name one by its path.");
    }
    return real(found.get(0).path());
  }

  private static PortInfo describe(SerialPort port) {
    String path = port.getSystemPortPath();
    return new PortInfo(
        path,
        known(port.getPortDescription()),
        known(port.getManufacturer()),
        known(port.getSerialNumber()),
        port.getVendorID(),
        port.getProductID(),
        linksTo(path),
        List.of());
  }

  private static String known(String text) {
    return text == null || SAYS_NOTHING.contains(text) ? "" : text;
  }

  private static List<String> linksTo(String path) {
    try (Stream<Path> links = Files.walk(LINKS, 2)) {
      Path device = Path.of(path).toRealPath();
      return links
          .filter(Files::isSymbolicLink)
          .filter(link -> pointsTo(link, device))
          .map(Path::toString)
          .sorted()
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  private static boolean pointsTo(Path link, Path device) {
    try {
      return link.toRealPath().equals(device);
    } catch (IOException e) {
      return false;
    }
  }
}
