package org.chordlog.account;

import org.chordlog.store.Accounts.Person;

/**
 * The password of invented people who have chosen one: its hash is made once a process, since each
 * takes an eighth of a second.
 */
public final class ChosenPassword {
  public static final String TEXT = "three wide rollers";
  private static final String HASH = Passwords.hash(TEXT);

  private ChosenPassword() {}

  /** As {@link Entrance#activate} with that password: the secret of a session. */
  public static String begin(Entrance entrance, Person person) {
    return entrance.sessions().begin(entrance.people().chosen(person, HASH));
  }
}
