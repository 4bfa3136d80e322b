package org.chordlog.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.store.Accounts;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What ends by time, with a clock that the test sets; the store is the real one. */
@Tag("slow")
final class EntranceTest {
  private static final String PASSWORD = "three wide rollers";
  @TempDir Path directory;
  private Store store;
  private Instant now = Instant.parse("2026-05-04T06:00:00Z");
  private Entrance entrance;
  private final List<String> ended = new ArrayList<>();

  /** Shows the time of the test. */
  private final class ShownClock extends Clock {
    @Override
    public ZoneOffset getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    entrance = new Entrance(store.accounts(), new ShownClock());
    entrance.whenEnded(ended::add);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void later(Duration by) {
    now = now.plus(by);
  }

  private String signedIn(String name, Role role) {
    String code = entrance.people().add(name, List.of(role.name()), "a test").code();
    return entrance.activate(name, code, PASSWORD, "here");
  }

  private boolean isOpen(String session) {
    return entrance.bySession(session).isPresent();
  }

  @Test
  void whoMayMuchIsSignedOutAfterHalfAnHourWithoutARequest() {
    String quality = signedIn("Ann", Role.QUALITY);
    String operator = signedIn("Bo", Role.OPERATOR);
    later(Duration.ofMinutes(29));
    assertTrue(isOpen(quality));
    later(Duration.ofMinutes(31));
    assertFalse(isOpen(quality));
    assertTrue(isOpen(operator));
    entrance.sessions().sweep();
    assertEquals(1, ended.size());
    assertEquals(1, store.accounts().sessions().size());
  }

  /** As while the disk is full. */
  @Test
  void anEndThatTheStoreDoesNotTakeIsTriedAgain() {
    AtomicBoolean full = new AtomicBoolean(true);
    entrance = new Entrance(takesNoEnds(full), new ShownClock());
    entrance.whenEnded(ended::add);
    String operator = signedIn("Ann", Role.OPERATOR);
    entrance.sessions().end(entrance.bySession(operator).orElseThrow().session());
    assertFalse(isOpen(operator));
    assertEquals(1, ended.size());
    assertEquals(1, store.accounts().sessions().size());
    full.set(false);
    entrance.sessions().sweep();
    assertEquals(List.of(), store.accounts().sessions());
  }

  /** The accounts of the store, whose sessions can't be ended while it is full. */
  private Accounts takesNoEnds(AtomicBoolean full) {
    InvocationHandler handler =
        (proxy, method, arguments) -> {
          if (method.getName().equals("end") && full.get()) {
            throw new StoreException("the disk is full", null);
          }
          return method.invoke(store.accounts(), arguments);
        };
    return (Accounts)
        Proxy.newProxyInstance(
            Accounts.class.getClassLoader(), new Class<?>[] {Accounts.class}, handler);
  }

  @Test
  void nobodyIsSignedInLongerThanAShift() {
    String operator = signedIn("Bo", Role.OPERATOR);
    for (int hour = 1; hour <= 12; hour++) {
      later(Duration.ofHours(1));
      assertTrue(isOpen(operator), "hour " + hour);
    }
    later(Duration.ofSeconds(1));
    assertFalse(isOpen(operator));
  }

  @Test
  void aCodeIsTooOldAfterADay() {
    String code = entrance.people().add("Ann", List.of("viewer"), "a test").code();
    later(Duration.ofHours(24));
    assertThrows(WrongSecret.class, () -> entrance.activate("Ann", code, PASSWORD, "here"));
  }

  @Test
  void aTokenEndsAtItsDay() {
    Tokens.Made made = entrance.tokens().add("scraper", List.of("look"), 2, "a test");
    later(Duration.ofDays(2));
    assertTrue(entrance.byToken(made.secret(), "here").isPresent());
    later(Duration.ofSeconds(1));
    assertTrue(entrance.byToken(made.secret(), "here").isEmpty());
  }

  @Test
  void atASharedScreenThePersonEndsWithTheShiftAndTheScreenStays() {
    String screen = entrance.screens().share("Tablet 1", "a test");
    String unusedSession = signedIn("Bo", Role.OPERATOR);
    long bo = entrance.people().active("Bo").orElseThrow().id();
    var unusedAccount = entrance.people().pin(bo, "271828", "a test");
    Caller nobody = entrance.bySession(screen).orElseThrow();
    assertEquals("Bo", entrance.atScreen(nobody, "Bo", "271828", "here").name());
    later(Duration.ofHours(12));
    Caller after = entrance.bySession(screen).orElseThrow();
    assertEquals("", after.name());
    assertFalse(after.may(Right.MEASURE));
    assertTrue(after.may(Right.LOOK));
  }

  @Test
  void changingThePasswordEndsTheOtherSessionsOnly() {
    String one = signedIn("Ann", Role.QUALITY);
    String two = entrance.signIn("Ann", PASSWORD, "there");
    Caller caller = entrance.bySession(two).orElseThrow();
    entrance.password(caller, PASSWORD, "four narrow rollers", "there");
    assertFalse(isOpen(one));
    assertTrue(isOpen(two));
    assertThrows(WrongSecret.class, () -> entrance.signIn("Ann", PASSWORD, "there"));
  }

  @Test
  void whoTriesWronglyWaitsTwiceAsLongEachTimeUpToAQuarterOfAnHour() {
    AtomicLong nanos = new AtomicLong();
    Tries tries = new Tries(nanos::get);
    List<Long> waited = new ArrayList<>();
    for (int i = 1; i <= 20; i++) {
      assertThrows(WrongSecret.class, () -> wrong(tries));
      long seconds = i < 5 ? 0 : assertThrows(TryLater.class, () -> wrong(tries)).seconds();
      waited.add(seconds);
      nanos.addAndGet(TimeUnit.SECONDS.toNanos(seconds));
    }
    assertEquals(List.of(0L, 0L, 0L, 0L, 2L, 3L, 5L, 9L), waited.subList(0, 8));
    assertEquals(901L, waited.get(19));
  }

  private static void wrong(Tries tries) {
    String unused =
        tries.of(
            "Ann",
            "here",
            () -> {
              throw new WrongSecret("wrong");
            });
  }

  /**
   * Made by the argon2 command of Debian 12 (0~20171227), which is the reference implementation:
   * argon2 invented-salt-16 -id -t 3 -k 12288 -p 1 -l 32 -e.
   */
  @Test
  void hashesAreThoseOfTheReferenceImplementation() {
    String hash =
        "$argon2id$v=19$m=12288,t=3,p=1$aW52ZW50ZWQtc2FsdC0xNg"
            + "$vrXndfNOP5SfbkFSePiUrXcH1MMmIRD369q7j24D2Ps";
    assertTrue(Passwords.same(PASSWORD, hash));
    assertFalse(Passwords.same("Three wide rollers", hash));
  }
}
