package org.chordlog.account;

import java.util.Set;

/**
 * Someone who signed in at a provider of OpenID Connect: known by issuer and subject, which never
 * change hands; the name is for people, the roles are those of the person's groups.
 */
public record Elsewhere(String issuer, String subject, String name, Set<String> roles) {
  /** Letters of {@link #mark}. */
  static final int MARK = 6;

  public Elsewhere {
    roles = Role.known(roles);
  }

  /** An issuer has no blanks. */
  String hash() {
    return Random.hash("identity " + issuer + " " + subject);
  }

  /** Tells two people of one name apart. */
  String mark() {
    return hash().substring(0, MARK);
  }

  /** Without what is not seen, at most so long. */
  String shortName(int most) {
    String seen = name.replaceAll("\\p{C}", "").strip();
    String shown = seen.isEmpty() ? "person " + mark() : seen;
    return shown.substring(0, Math.min(most, shown.length())).strip();
  }
}
