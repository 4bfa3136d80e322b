package org.chordlog.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import org.chordlog.link.LinkException.Reason;

/** The system's error numbers (errno of POSIX as Linux counts them) as sentences that help. */
final class PortFaults {
  private static final int NO_ENTRY = 2;
  private static final int IO_ERROR = 5;
  private static final int NO_DEVICE_OR_ADDRESS = 6;
  private static final int TRY_AGAIN = 11;
  private static final int NO_ACCESS = 13;
  private static final int BUSY = 16;
  private static final int NO_DEVICE = 19;
  private static final int INVALID = 22;
  private static final int NOT_A_TERMINAL = 25;
  private static final int NOT_CONNECTED = 107;
  private static final int HOST_DOWN = 112;

  private PortFaults() {}

  static LinkException missing(String port) {
    return new LinkException(
        Reason.MISSING,
        port + " does not exist. Plug the indicator in, switch it on, or pair it again.");
  }

  static LinkException lost(String port) {
    return new LinkException(
        Reason.LOST, port + " is gone: unplugged, switched off or out of range.");
  }

  static LinkException opening(String port, Path device, int errno, int rate) {
    return switch (errno) {
      case NO_ENTRY, NO_DEVICE, NO_DEVICE_OR_ADDRESS ->
          Files.exists(device) ? busy(port) : missing(port);
      case NO_ACCESS -> noPermission(port, device);
      case TRY_AGAIN, BUSY -> busy(port);
      case IO_ERROR -> lost(port);
      case NOT_A_TERMINAL -> new LinkException(Reason.NOT_A_PORT, port + " is not a serial port.");
      case INVALID ->
          new LinkException(
              Reason.REFUSED, port + " does not take rate " + rate + " or these bits.");
      case NOT_CONNECTED, HOST_DOWN ->
          new LinkException(
              Reason.REFUSED, port + " is still connecting: bring the indicator within range.");
      default -> notOpened(port, device, errno);
    };
  }

  /** Also what the library says of a device that another station of this service has open. */
  private static LinkException busy(String port) {
    return new LinkException(
        Reason.BUSY, port + " is in use by another program or station. Close it there.");
  }

  /** The library may report its own second opening, or nothing: find out what we can. */
  private static LinkException notOpened(String port, Path device, int errno) {
    if (!Files.exists(device)) {
      return missing(port);
    }
    if (!Files.isReadable(device) || !Files.isWritable(device)) {
      return noPermission(port, device);
    }
    return new LinkException(Reason.REFUSED, port + " can't be opened (error " + errno + ").");
  }

  private static LinkException noPermission(String port, Path device) {
    return new LinkException(
        Reason.NO_PERMISSION, port + " may not be opened by this user. " + adviceFor(device));
  }

  private static String adviceFor(Path device) {
    try {
      PosixFileAttributes owner =
          Files.readAttributes(device, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      String group = owner.group().getName();
      return "It belongs to group "
          + group
          + " ("
          + PosixFilePermissions.toString(owner.permissions())
          + "): add the user with `sudo usermod -aG "
          + group
          + " USER` and log in again.";
    } catch (IOException | UnsupportedOperationException e) {
      return "Ask for the right to read and write it.";
    }
  }
}
