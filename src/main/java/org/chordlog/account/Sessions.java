package org.chordlog.account;

import java.time.Clock;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.chordlog.store.Accounts;
import org.chordlog.store.Accounts.Person;
import org.chordlog.store.Accounts.Session;
import org.chordlog.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Who is signed in where. Sessions outlive a restart; who stands at a shared screen does not. Any
 * thread; what a session's end ends besides is told by {@code ended}.
 */
public final class Sessions {
  private static final Logger LOG = LoggerFactory.getLogger(Sessions.class);
  private static final Duration LONGEST = Duration.ofHours(12);
  private static final Duration IDLE = Duration.ofMinutes(30);
  private static final Duration SCREEN_LONGEST = Duration.ofDays(366);
  private static final Set<Role> AT_SCREENS = EnumSet.of(Role.OPERATOR, Role.VIEWER);

  /** {@code person}: 0 where nobody has said who is at the screen. */
  private record Open(Session session, long person, long personMicros, long usedMicros) {}

  private final Accounts kept;
  private final People people;
  private final Clock clock;
  private final Map<String, Open> open = new ConcurrentHashMap<>();

  /** Ended here, not yet in the store. */
  private final Set<String> notStored = ConcurrentHashMap.newKeySet();

  private volatile Consumer<String> ended = hash -> {};

  Sessions(Accounts kept, People people, Clock clock) {
    this.kept = kept;
    this.people = people;
    this.clock = clock;
    long now = micros();
    kept.sessions().forEach(each -> open.put(each.secret(), known(each, now)));
  }

  /** A screen has not asked since the start; people are not taken to have been idle. */
  private static Open known(Session session, long nowMicros) {
    boolean shared = !session.screen().isEmpty();
    return new Open(session, session.accountId(), nowMicros, shared ? 0 : nowMicros);
  }

  void whenEnded(Consumer<String> hash) {
    ended = hash;
  }

  /** The secret of a new one of that person. */
  String begin(Person person) {
    String secret = Random.random();
    Session session = new Session(Random.hash(secret), person.id(), "", micros());
    kept.begin(session);
    open(session);
    return secret;
  }

  /** From now on; the store has it. */
  void open(Session session) {
    open.put(session.secret(), new Open(session, session.accountId(), micros(), micros()));
  }

  /**
   * A screen that people share: who is there, empty for nobody, and when it last asked, 0 for not
   * since the start.
   */
  record Shared(Session session, String person, long usedMicros) {}

  List<Shared> shared() {
    return open.values().stream()
        .filter(each -> !each.session().screen().isEmpty())
        .map(each -> new Shared(each.session(), caller(each).name(), each.usedMicros()))
        .toList();
  }

  Optional<Caller> caller(String secret) {
    Open found = open.get(Random.hash(secret));
    if (found == null || over(found)) {
      return Optional.empty();
    }
    open.computeIfPresent(
        found.session().secret(),
        (hash, each) -> new Open(each.session(), each.person(), each.personMicros(), micros()));
    return Optional.of(caller(found));
  }

  private Caller caller(Open found) {
    String screen = found.session().screen();
    Optional<Person> person = people.byId(found.person());
    if (screen.isEmpty()) {
      Person who = person.orElseThrow();
      return new Caller(who.name(), Role.rights(People.roles(who)), found.session().secret(), "");
    }
    boolean there = found.person() != 0 && micros() - found.personMicros() < micros(LONGEST);
    boolean measures = there && person.filter(each -> People.has(each, Right.MEASURE)).isPresent();
    Set<Right> rights = measures ? EnumSet.of(Right.LOOK, Right.MEASURE) : EnumSet.of(Right.LOOK);
    String name = measures ? person.orElseThrow().name() : "";
    return new Caller(name, rights, found.session().secret(), screen);
  }

  /** That person is at the shared screen from now on. */
  Caller at(Caller screen, Person person) {
    Open now =
        open.computeIfPresent(
            screen.session(),
            (hash, each) -> new Open(each.session(), person.id(), micros(), micros()));
    if (now == null) {
      throw new WrongSecret("This screen is no longer shared.");
    }
    return caller(now);
  }

  private boolean over(Open each) {
    boolean shared = !each.session().screen().isEmpty();
    long age = micros() - each.session().beganMicros();
    if (shared) {
      return age > micros(SCREEN_LONGEST);
    }
    Optional<Person> person = people.byId(each.person()).filter(who -> !who.disabled());
    boolean calm = person.isPresent() && AT_SCREENS.containsAll(People.roles(person.get()));
    Duration idle = calm ? LONGEST : IDLE;
    return person.isEmpty() || age > micros(LONGEST) || micros() - each.usedMicros() > micros(idle);
  }

  void end(String hash) {
    if (open.remove(hash) != null) {
      notStored.add(hash);
      ended.accept(hash);
      storeEnd(hash);
    }
  }

  /** Where the store does not take it now it is tried again, so that a restart does not undo it. */
  private void storeEnd(String hash) {
    try {
      kept.end(hash);
      notStored.remove(hash);
    } catch (StoreException e) {
      LOG.atWarn().setCause(e).log("the end of a session was not stored; tried again");
    }
  }

  /** Nobody is at the shared screen any more. */
  void leave(String hash) {
    Open unused =
        open.computeIfPresent(hash, (same, each) -> new Open(each.session(), 0, 0, micros()));
  }

  /** All of that person, but for the one named. */
  void endOf(long person, String but) {
    endWhere(
        each ->
            each.session().screen().isEmpty()
                && each.person() == person
                && !each.session().secret().equals(but));
    open.replaceAll(
        (hash, each) ->
            each.person() == person && !each.session().screen().isEmpty()
                ? new Open(each.session(), 0, 0, each.usedMicros())
                : each);
  }

  /** Ends what is over by now; called every few seconds, so that its events end too. */
  public void sweep() {
    notStored.forEach(this::storeEnd);
    endWhere(this::over);
  }

  private void endWhere(Predicate<Open> which) {
    List<Open> gone = open.values().stream().filter(which).toList();
    gone.forEach(each -> end(each.session().secret()));
  }

  private long micros() {
    return clock.millis() * 1_000;
  }

  private static long micros(Duration duration) {
    return duration.toMillis() * 1_000;
  }
}
