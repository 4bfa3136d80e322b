package org.chordlog.cli.service;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.util.stream.Stream;

/** The address that people open for the one that the service listens at. */
final class ShownAddress {
  private ShownAddress() {}

  /**
   * For all addresses of this computer its first one that others reach, since none can be opened
   * that means all; in brackets where it has colons.
   */
  static String of(String host) {
    String address = listensAtAll(host) ? reachable() : host;
    return address.contains(":") ? "[" + address + "]" : address;
  }

  private static boolean listensAtAll(String host) {
    try {
      return InetAddress.getByName(host).isAnyLocalAddress();
    } catch (IOException e) {
      return false;
    }
  }

  private static String reachable() {
    try {
      return NetworkInterface.networkInterfaces()
          .flatMap(ShownAddress::addresses)
          .map(InetAddress::getHostAddress)
          .findFirst()
          .orElse("127.0.0.1");
    } catch (IOException e) {
      return "127.0.0.1";
    }
  }

  private static Stream<InetAddress> addresses(NetworkInterface of) {
    return of.inetAddresses()
        .filter(each -> each instanceof Inet4Address && !each.isLoopbackAddress());
  }
}
