package org.chordlog.account;

import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.chordlog.store.Accounts;
import org.chordlog.store.Accounts.Person;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where people and programs come in: who proves what is let in with the rights of it, and wrong
 * proofs are made to wait and logged. Addresses are those that requests come from. Any thread.
 */
public final class Entrance {
  private static final Logger LOG = LoggerFactory.getLogger(Entrance.class);
  private final People people;
  private final Tokens tokens;
  private final Sessions sessions;
  private final SharedScreens screens;
  private final Tries tries = new Tries(System::nanoTime);

  public Entrance(Accounts kept, Clock clock) {
    people = new People(kept, clock);
    tokens = new Tokens(kept, clock);
    sessions = new Sessions(kept, people, clock);
    screens = new SharedScreens(kept, sessions, clock);
  }

  public People people() {
    return people;
  }

  public Tokens tokens() {
    return tokens;
  }

  public Sessions sessions() {
    return sessions;
  }

  /** Called with the hash of each session that ends. */
  public void whenEnded(Consumer<String> hash) {
    sessions.whenEnded(hash);
  }

  public Optional<Caller> bySession(String secret) {
    return sessions.caller(secret);
  }

  /** A wrong token counts against the address. */
  public Optional<Caller> byToken(String secret, String address) {
    try {
      return Optional.of(
          tries.of(
              "of a program at " + address,
              address,
              () -> tokens.caller(secret).orElseThrow(() -> new WrongSecret("token"))));
    } catch (WrongSecret e) {
      return Optional.empty();
    }
  }

  /** The secret of a new session; {@link WrongSecret}, {@link TryLater}. */
  public String signIn(String name, String password, String address) {
    Person person = tries.of(name, address, () -> proved(name, password));
    return begun(person, address);
  }

  private Person proved(String name, String password) {
    Optional<Person> person = people.active(name);
    String hash = person.map(each -> each.secrets().password()).orElse("");
    if (!Passwords.same(password, hash)) {
      throw new WrongSecret("This name and password do not belong together.");
    }
    return person.orElseThrow();
  }

  private String begun(Person person, String address) {
    LOG.atInfo()
        .addKeyValue("account", person.name())
        .addKeyValue("address", address)
        .log("signed in");
    return sessions.begin(person);
  }

  /** As {@link #signIn}, of someone whom the provider proved; the rights are those of now. */
  public String signIn(Elsewhere proved, String address) {
    return begun(people.elsewhere(proved), address);
  }

  /** As {@link #signIn}, by a code, with the password of the person's choice. */
  public String activate(String name, String code, String password, String address) {
    Person person = tries.of(name, address, () -> people.activate(name, code, password));
    sessions.endOf(person.id(), "");
    return begun(person, address);
  }

  /** The one who is signed in proves the password of now; all other sessions end. */
  public void password(Caller caller, String now, String next, String address) {
    Person person = tries.of(caller.name(), address, () -> proved(caller.name(), now));
    people.password(person, next);
    sessions.endOf(person.id(), caller.session());
  }

  /** A shared screen stays one: only who is at it leaves. */
  public void signOut(Caller caller) {
    if (caller.screen().isEmpty()) {
      sessions.end(caller.session());
    } else {
      sessions.leave(caller.session());
    }
  }

  /** Ends the caller's own session; the secret of the shared screen's. */
  public String share(Caller administrator, String screen) {
    String secret = screens.share(screen, administrator.name());
    sessions.end(administrator.session());
    return secret;
  }

  public SharedScreens screens() {
    return screens;
  }

  /** Who is at a shared screen says so by PIN. */
  public Caller atScreen(Caller screen, String name, String pin, String address) {
    return sessions.at(screen, tries.of(name, address, () -> pinned(name, pin)));
  }

  private Person pinned(String name, String pin) {
    Optional<Person> person = people.active(name).filter(each -> People.has(each, Right.MEASURE));
    if (!Passwords.same(pin, person.map(each -> each.secrets().pin()).orElse(""))) {
      throw new WrongSecret("This name and PIN do not belong together.");
    }
    return person.orElseThrow();
  }

  /** The same by what the reader of a badge typed. */
  public Caller atScreen(Caller screen, String badge, String address) {
    Person person = tries.of("of a badge at " + address, address, () -> badged(badge));
    return sessions.at(screen, person);
  }

  private Person badged(String badge) {
    return people
        .byBadge(badge)
        .filter(each -> People.has(each, Right.MEASURE))
        .orElseThrow(() -> new WrongSecret("Nobody who measures has this badge."));
  }

  /** Ends what the person has open: for accounts that were disabled or changed. */
  public void endOf(long person) {
    sessions.endOf(person, "");
  }

  /** Those who measure, by name. */
  public Set<String> atScreens() {
    TreeSet<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    people.all().stream()
        .filter(each -> !each.disabled() && People.has(each, Right.MEASURE))
        .filter(each -> !each.secrets().pin().isEmpty())
        .forEach(each -> names.add(each.name()));
    return names;
  }
}
