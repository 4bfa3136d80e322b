package org.chordlog.store;

import java.util.List;
import java.util.Set;
import org.chordlog.measure.Change;

/**
 * Who may use the service: people, tokens of programs, and sessions that were begun. Secrets come
 * as hashes, an empty text for none. What changes a person, a token or a shared screen is one
 * commit with its entry in {@link Changes}.
 */
public interface Accounts {
  /** A person; {@code roles} by name. The name is unique whatever its capitals. */
  record Person(long id, String name, Set<String> roles, boolean disabled, Secrets secrets) {
    public Person {
      roles = Set.copyOf(roles);
    }
  }

  /**
   * Hashes of what a person proves to be this person by; {@code identity} of who a provider of
   * OpenID Connect says it is.
   */
  record Secrets(
      String password,
      String pin,
      String badge,
      String code,
      long codeUntilMicros,
      String identity) {
    public static final Secrets NONE = new Secrets("", "", "", "", 0, "");
  }

  /** Of a program; {@code rights} by name. */
  record Token(
      long id, String name, String secret, Set<String> rights, long untilMicros, boolean revoked) {
    public Token {
      rights = Set.copyOf(rights);
    }
  }

  /** Of a person, or, with {@code accountId} 0, of a screen that people share. */
  record Session(String secret, long accountId, String screen, long beganMicros) {}

  List<Person> people();

  /**
   * Under a new id. {@link org.chordlog.measure.BadInput} where name, badge or identity is taken.
   */
  Person add(Person person, Change change);

  /** The person of that id as given, but for the id. */
  Person change(Person person, Change change);

  List<Token> tokens();

  /** Under a new id. {@link org.chordlog.measure.BadInput} where the name is taken. */
  Token add(Token token, Change change);

  void revoke(long tokenId, Change change);

  List<Session> sessions();

  void begin(Session session);

  /** Of a screen that people share. */
  void share(Session screen, Change change);

  void end(String secret);

  /** Of a screen that people shared; nothing where it was ended before. */
  void endShared(String secret, Change change);
}
