package org.chordlog.account;

import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import org.chordlog.account.Sessions.Shared;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.store.Accounts;
import org.chordlog.store.Accounts.Session;

/** The screens that people share, each with a name of its own, until they are ended. Any thread. */
public final class SharedScreens {
  /** Of a hash of 256 bits: enough to tell screens apart. */
  private static final int ID_LETTERS = 12;

  /**
   * One of them. {@code person} is who is there, empty for nobody; {@code usedMicros} when it last
   * asked since the service started, 0 for not yet.
   */
  public record Screen(String id, String name, long sharedMicros, String person, long usedMicros) {}

  private final Accounts kept;
  private final Sessions sessions;
  private final Clock clock;

  SharedScreens(Accounts kept, Sessions sessions, Clock clock) {
    this.kept = kept;
    this.sessions = sessions;
    this.clock = clock;
  }

  /** By name. */
  public List<Screen> all() {
    return sessions.shared().stream()
        .map(SharedScreens::screen)
        .sorted(Comparator.comparing(Screen::name, String.CASE_INSENSITIVE_ORDER))
        .toList();
  }

  private static Screen screen(Shared each) {
    Session session = each.session();
    return new Screen(
        id(session), session.screen(), session.beganMicros(), each.person(), each.usedMicros());
  }

  private static String id(Session each) {
    return each.secret().substring(0, ID_LETTERS);
  }

  /** The secret of a new one. */
  synchronized String share(String name, String by) {
    String wanted = name.strip();
    if (sessions.shared().stream()
        .anyMatch(each -> each.session().screen().equalsIgnoreCase(wanted))) {
      throw new BadInput(
          "name",
          "'" + wanted + "'",
          "is the name of a screen that is shared",
          "another name, or this one after sharing that screen is ended on the page Accounts");
    }
    String secret = Random.random();
    Session session = new Session(Random.hash(secret), 0, wanted, clock.millis() * 1_000);
    kept.share(session, change(wanted, by, "shared"));
    sessions.open(session);
    return secret;
  }

  /** Whoever stands at it has to sign in again. */
  public synchronized void end(String id, String by) {
    Session session =
        sessions.shared().stream()
            .map(Shared::session)
            .filter(each -> id(each).equals(id))
            .findFirst()
            .orElseThrow(
                () ->
                    new BadInput(
                        "screen", id, "is not shared", "one of the screens that are listed"));
    kept.endShared(session.secret(), change(session.screen(), by, "no longer shared"));
    sessions.end(session.secret());
  }

  private Change change(String screen, String by, String to) {
    return new Change(0, clock.millis() * 1_000, by, "screen " + screen, "", to, "");
  }
}
