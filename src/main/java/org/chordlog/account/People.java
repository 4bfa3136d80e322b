package org.chordlog.account;

import java.time.Clock;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.Check;
import org.chordlog.store.Accounts;
import org.chordlog.store.Accounts.Person;
import org.chordlog.store.Accounts.Secrets;

/** The people who have an account, and what they prove to be themselves by. Any thread. */
public final class People {
  private static final Duration CODE_VALID = Duration.ofHours(24);
  private static final String FIRST = "administrator";
  private static final int LONGEST_NAME = 80;
  private final Accounts kept;
  private final Clock clock;
  private volatile List<Person> all;

  People(Accounts kept, Clock clock) {
    this.kept = kept;
    this.clock = clock;
    all = kept.people();
  }

  /** A new account or code, with the code that is shown once. */
  public record WithCode(Person person, String code) {}

  public List<Person> all() {
    return all;
  }

  Optional<Person> byId(long id) {
    return all.stream().filter(each -> each.id() == id).findFirst();
  }

  /** By name whatever its capitals; not one that is disabled. */
  public Optional<Person> active(String name) {
    return all.stream()
        .filter(each -> each.name().equalsIgnoreCase(name.strip()) && !each.disabled())
        .findFirst();
  }

  Optional<Person> byBadge(String badge) {
    String hash = Proofs.badge(badge);
    return all.stream()
        .filter(each -> !each.disabled() && each.secrets().badge().equals(hash))
        .findFirst();
  }

  static Set<Role> roles(Person person) {
    return Role.read(person.roles());
  }

  static boolean has(Person person, Right right) {
    return Role.rights(roles(person)).contains(right);
  }

  /** Can do so here, whether or not the provider of identities answers. */
  private static boolean administers(Person person) {
    return !person.disabled()
        && !person.secrets().password().isEmpty()
        && has(person, Right.ADMINISTER);
  }

  /** The one who begins: there is nobody who could administer. Its code is new at each call. */
  public synchronized Optional<WithCode> first() {
    if (all.stream().anyMatch(People::administers)) {
      return Optional.empty();
    }
    return Optional.of(
        active(FIRST)
            .map(each -> newCode(each.id(), "this computer"))
            .orElseGet(() -> add(FIRST, List.of(Role.ADMINISTRATOR.name()), "this computer")));
  }

  public synchronized WithCode add(String name, Collection<String> roles, String by) {
    String wanted = name.strip();
    Check.text("name", wanted);
    if (wanted.length() > LONGEST_NAME) {
      throw new BadInput("name", wanted, "is too long", "1 to " + LONGEST_NAME + " characters");
    }
    String code = Random.code();
    Person made =
        kept.add(
            coded(new Person(0, wanted, Role.names(Role.read(roles)), false, Secrets.NONE), code),
            change(wanted, by, "", String.join(", ", Role.names(Role.read(roles)))));
    all = kept.people();
    return new WithCode(made, code);
  }

  private Person coded(Person before, String code) {
    return Proofs.coded(before, code, micros() + CODE_VALID.toMillis() * 1_000);
  }

  /** Takes the password away and gives a code, by which a new one is chosen within 24 h. */
  public WithCode newCode(long id, String by) {
    byId(id).ifPresent(People::requireOwnPassword);
    String code = Random.code();
    Person now = change(id, by, "new code", each -> coded(each, code));
    return new WithCode(now, code);
  }

  /** The person whose code that is, with the password chosen; {@link WrongSecret}. */
  Person activate(String name, String code, String password) {
    Person person = active(name).filter(each -> valid(each, code)).orElseThrow(People::wrongCode);
    Passwords.require(password, person.name());
    return chosen(person, Passwords.hash(password));
  }

  Person chosen(Person person, String hash) {
    return change(person.id(), person.name(), "password chosen", each -> Proofs.passed(each, hash));
  }

  private boolean valid(Person person, String code) {
    Secrets secrets = person.secrets();
    return !secrets.code().isEmpty()
        && micros() < secrets.codeUntilMicros()
        && Proofs.isCode(code, secrets);
  }

  private static WrongSecret wrongCode() {
    return new WrongSecret("This name and code do not belong together, or the code is too old.");
  }

  void password(Person person, String password) {
    Passwords.require(password, person.name());
    String hash = Passwords.hash(password);
    Person unused =
        change(person.id(), person.name(), "password changed", each -> Proofs.passed(each, hash));
  }

  public Person roles(long id, Collection<String> roles, String by) {
    Set<String> names = Role.names(Role.read(roles));
    return change(
        id,
        by,
        "roles " + String.join(", ", names),
        each -> new Person(id, each.name(), names, each.disabled(), each.secrets()));
  }

  public Person disable(long id, boolean disabled, String by) {
    return change(
        id,
        by,
        disabled ? "disabled" : "enabled",
        each -> new Person(id, each.name(), each.roles(), disabled, each.secrets()));
  }

  /** Six digits; none where empty. */
  public Person pin(long id, String pin, String by) {
    String hash = Proofs.newPin(pin);
    return change(
        id,
        by,
        pin.isEmpty() ? "PIN taken away" : "PIN set",
        each -> Proofs.identified(each, hash, each.secrets().badge()));
  }

  /** What its reader types; none where empty. */
  public Person badge(long id, String badge, String by) {
    String hash = Proofs.newBadge(badge);
    return change(
        id,
        by,
        badge.isEmpty() ? "badge taken away" : "badge set",
        each -> Proofs.identified(each, each.secrets().pin(), hash));
  }

  /** The account of who signed in at the provider, made or given the roles of now. */
  synchronized Person elsewhere(Elsewhere who) {
    Optional<Person> found =
        all.stream().filter(each -> each.secrets().identity().equals(who.hash())).findFirst();
    if (found.filter(Person::disabled).isPresent()) {
      throw new WrongSecret("This account is disabled.");
    }
    return found.isEmpty() ? made(who) : roled(found.get(), who);
  }

  private Person made(Elsewhere who) {
    String wanted = who.shortName(LONGEST_NAME - Elsewhere.MARK - 1);
    boolean taken =
        wanted.equalsIgnoreCase(FIRST)
            || all.stream().anyMatch(each -> each.name().equalsIgnoreCase(wanted));
    String name = taken ? wanted + " " + who.mark() : wanted;
    Secrets secrets = new Secrets("", "", "", "", 0, who.hash());
    Person made =
        kept.add(
            new Person(0, name, who.roles(), false, secrets),
            change(name, who.issuer(), "", String.join(", ", who.roles())));
    all = kept.people();
    return made;
  }

  private Person roled(Person person, Elsewhere who) {
    return person.roles().equals(who.roles())
        ? person
        : roles(person.id(), who.roles(), who.issuer());
  }

  private static void requireOwnPassword(Person person) {
    if (!person.secrets().identity().isEmpty()) {
      throw new BadInput(
          "account", person.name(), "signs in at the provider", "a new password there");
    }
  }

  private synchronized Person change(long id, String by, String to, UnaryOperator<Person> how) {
    Person before =
        byId(id).orElseThrow(() -> new BadInput("account", id, "does not exist", "its number"));
    Person after = how.apply(before);
    requireAdministrator(before, after);
    Person now = kept.change(after, change(before.name(), by, said(before), to));
    all = kept.people();
    return now;
  }

  private static String said(Person person) {
    return String.join(", ", person.roles()) + (person.disabled() ? ", disabled" : "");
  }

  /** Nobody could mend what the last one did. */
  private void requireAdministrator(Person before, Person after) {
    boolean here = before.secrets().identity().isEmpty();
    boolean was = here && !before.disabled() && has(before, Right.ADMINISTER);
    boolean is = !after.disabled() && has(after, Right.ADMINISTER);
    boolean other = all.stream().anyMatch(each -> each.id() != before.id() && administers(each));
    if (was && !is && !other) {
      throw new BadInput(
          "account", before.name(), "is the only administrator", "another one made before");
    }
  }

  private Change change(String name, String by, String from, String to) {
    return new Change(0, micros(), by, "account " + name, from, to, "");
  }

  private long micros() {
    return clock.millis() * 1_000;
  }
}
