package org.chordlog.notify.channel;

import java.nio.file.Path;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/**
 * The server that mails are given to. {@code caFile} vouches for it in place of the issuers that
 * Java trusts.
 */
public record MailServer(
    String host,
    int port,
    Encryption encryption,
    String from,
    @Nullable Account account,
    @Nullable Path caFile) {
  private static final Set<String> THIS_COMPUTER = Set.of("localhost", "127.0.0.1", "::1");

  /** How the connection is protected; the server's certificate must be of its host's name. */
  public enum Encryption {
    /** From the command STARTTLS on (RFC 3207); nothing is sent where the server has none. */
    STARTTLS(587),
    /** From the first byte on (RFC 8314). */
    TLS(465),
    /** Not at all: only to this computer. */
    NONE(25);

    /** Where no port is given. */
    public final int usualPort;

    Encryption(int usualPort) {
      this.usualPort = usualPort;
    }
  }

  /** Who sends, as the server knows him. */
  public record Account(String user, SecretFile password) {
    public Account {
      Check.text("user", user);
    }
  }

  public MailServer {
    if (!host.matches("[A-Za-z0-9.:_-]+")) {
      throw new BadInput("host", "'" + host + "'", "is not a host", "a name or an address");
    }
    Check.within("port", (long) port, 1, 65_535);
    if (encryption == Encryption.NONE && !THIS_COMPUTER.contains(host)) {
      throw new BadInput(
          "encryption", "none", "sends to " + host + " for all to read", "starttls, tls");
    }
  }

  /** Its host and port in one. */
  public String place() {
    return host + ":" + port;
  }
}
