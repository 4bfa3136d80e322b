package org.chordlog.notify.channel;

import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.trust.SecretFile;
import org.jspecify.annotations.Nullable;

/**
 * A program that is told by HTTP. It has one secret, or two while the receiver changes from one to
 * the other. {@code caFile} vouches for its server in place of the issuers that Java trusts.
 */
public record Webhook(String name, URI url, List<SecretFile> secrets, @Nullable Path caFile) {
  private static final Set<String> THIS_COMPUTER = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final int MOST_SECRETS = 2;

  public Webhook {
    Check.text("name", name);
    secrets = List.copyOf(secrets);
    if (secrets.isEmpty() || secrets.size() > MOST_SECRETS) {
      throw new BadInput(
          "secretFiles", secrets.size(), "is not how many secrets there may be", "1 or 2 files");
    }
    boolean ours = url.getHost() != null && THIS_COMPUTER.contains(url.getHost());
    boolean safe = "https".equals(url.getScheme()) || ("http".equals(url.getScheme()) && ours);
    if (!safe || url.getHost() == null || url.getUserInfo() != null || url.getFragment() != null) {
      throw new BadInput(
          "url",
          url.getUserInfo() == null ? url : "an address with a password",
          "is not an address that may be told",
          "https://HOST/PATH, or http://127.0.0.1/PATH on this computer");
    }
  }
}
