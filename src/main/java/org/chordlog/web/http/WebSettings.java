package org.chordlog.web.http;

import java.net.InetAddress;
import java.net.UnknownHostException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * Where the pages are served and how much a client may ask for. {@code token} is what
 * state-changing requests must carry; it may be empty only on a loopback address, or where people
 * sign in, where it means nothing.
 */
public record WebSettings(
    String host,
    int port,
    String token,
    int maxEventClients,
    int maxEventClientsPerAddress,
    int maxRequestBytes,
    Reach reach) {
  public static final String LOOPBACK = "127.0.0.1";
  public static final int LEAST_TOKEN = 16;
  public static final int USUAL_EVENT_CLIENTS = 32;
  public static final int USUAL_REQUEST_BYTES = 65_536;

  public WebSettings {
    Check.text("host", host);
    Check.within("port", port, 0, 65_535);
    Check.within("maxEventClients", maxEventClients, 1, 1_000);
    Check.within("maxEventClientsPerAddress", maxEventClientsPerAddress, 1, maxEventClients);
    Check.within("maxRequestBytes", maxRequestBytes, 1_024, 16_777_216);
    if (!loopback(host) && !reach.accounts() && token.length() < LEAST_TOKEN) {
      throw new BadInput(
          "token",
          token.isEmpty() ? "none" : token.length() + " characters",
          "is too short for a host that others can reach",
          "at least " + LEAST_TOKEN + " characters, or host 127.0.0.1");
    }
  }

  /** Unencrypted, without a proxy. */
  public WebSettings(
      String host,
      int port,
      String token,
      int maxEventClients,
      int maxEventClientsPerAddress,
      int maxRequestBytes) {
    this(
        host,
        port,
        token,
        maxEventClients,
        maxEventClientsPerAddress,
        maxRequestBytes,
        Reach.PLAIN);
  }

  /** The same, reached in that way. */
  public WebSettings reached(Reach other) {
    return new WebSettings(
        host, port, token, maxEventClients, maxEventClientsPerAddress, maxRequestBytes, other);
  }

  /** For this computer only, with as many event clients and bytes a request as usual. */
  public static WebSettings onLoopback(int port) {
    return new WebSettings(
        LOOPBACK, port, "", USUAL_EVENT_CLIENTS, USUAL_EVENT_CLIENTS, USUAL_REQUEST_BYTES);
  }

  public boolean loopback() {
    return loopback(host);
  }

  /** Whether only this computer reaches that address. */
  public static boolean isLoopback(String host) {
    return loopback(host);
  }

  private static boolean loopback(String host) {
    try {
      return InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException e) {
      throw new BadInput("host", host, "is not an address of this computer", "for example 0.0.0.0");
    }
  }
}
