package org.chordlog.link;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.util.Optional;

/** Addresses at which no indicator's device server is, but much that nobody should reach. */
final class NoDevice {
  private NoDevice() {}

  /** What is wrong with that address, after "is"; empty where a device may be there. */
  static Optional<String> reason(InetAddress address) {
    if (address.isMulticastAddress()) {
      return Optional.of("an address of many computers at once (multicast)");
    }
    if (address.isAnyLocalAddress() || broadcast(address)) {
      return Optional.of("the address of no single computer");
    }
    return address.isLinkLocalAddress()
        ? Optional.of("an address that computers give themselves (link-local)")
        : Optional.empty();
  }

  /** 0.0.0.0/8 and 240.0.0.0/4. */
  private static boolean broadcast(InetAddress address) {
    int first = address.getAddress()[0] & 0xff;
    return !(address instanceof Inet6Address) && (first == 0 || first >= 240);
  }
}
