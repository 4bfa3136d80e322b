package org.chordlog.web.http;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import org.chordlog.measure.BadInput;

/** An address, or all that share its first bits: 10.1.2.3 or 10.1.0.0/16. No name of a host. */
public record AddressRange(InetAddress first, int bits) {
  private static final String BYTE = "(25[0-5]|2[0-4]\\d|1\\d\\d|[1-9]?\\d)";
  private static final String V4 = BYTE + "(\\." + BYTE + "){3}";
  private static final String V6 = "\\[?[0-9a-fA-F:]*:[0-9a-fA-F.]*]?";
  private static final String FIELD = "--trusted-proxy";
  private static final String ALLOWED = "an address or a range, as 10.1.2.3 or 10.1.0.0/16";

  /**
   * Throws {@link BadInput} where it is neither an address nor a range; never asks a name server.
   */
  public static AddressRange read(String text) {
    int slash = text.indexOf('/');
    String address = slash < 0 ? text : text.substring(0, slash);
    InetAddress first =
        address(address).orElseThrow(() -> new BadInput(FIELD, text, "is not an address", ALLOWED));
    int all = first.getAddress().length * Byte.SIZE;
    return new AddressRange(first, slash < 0 ? all : bits(text, slash, all));
  }

  private static int bits(String text, int slash, int most) {
    String bits = text.substring(slash + 1);
    if (!bits.matches("\\d{1,3}") || Integer.parseInt(bits) > most) {
      throw new BadInput(FIELD, text, "is not a range", ALLOWED);
    }
    return Integer.parseInt(bits);
  }

  /** Whether the text is an address in digits, so that no name service is asked what it means. */
  static boolean isAddress(String text) {
    return address(text).isPresent();
  }

  /** False for what is no address. */
  public boolean holds(String text) {
    return address(text).filter(each -> holds(each.getAddress())).isPresent();
  }

  private boolean holds(byte[] other) {
    byte[] own = first.getAddress();
    for (int bit = 0; bit < bits && own.length == other.length; bit++) {
      int mask = 1 << (Byte.SIZE - 1 - bit % Byte.SIZE);
      if (((own[bit / Byte.SIZE] ^ other[bit / Byte.SIZE]) & mask) != 0) {
        return false;
      }
    }
    return own.length == other.length;
  }

  /** What has neither form could be a name, and is not looked up. */
  private static Optional<InetAddress> address(String text) {
    if (!text.matches(V4) && !text.matches(V6)) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(text));
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }
}
