package org.chordlog.account;

import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.Check;
import org.chordlog.store.Accounts;
import org.chordlog.store.Accounts.Token;

/** Tokens by which programs call, each with a name, rights and an end. Any thread. */
public final class Tokens {
  private static final String PREFIX = "clg_";
  private static final int MOST_DAYS = 366;
  private final Accounts kept;
  private final Clock clock;
  private final Map<Long, Long> usedMicros = new ConcurrentHashMap<>();
  private volatile Map<String, Token> byHash;

  Tokens(Accounts kept, Clock clock) {
    this.kept = kept;
    this.clock = clock;
    byHash = read();
  }

  private Map<String, Token> read() {
    return kept.tokens().stream().collect(Collectors.toMap(Token::secret, each -> each));
  }

  /** A new token with its secret, which is shown once. */
  public record Made(Token token, String secret) {}

  public List<Token> all() {
    return byHash.values().stream()
        .sorted((a, b) -> a.name().compareToIgnoreCase(b.name()))
        .toList();
  }

  /** Since this start; 0 for never. */
  public long usedMicros(Token token) {
    return usedMicros.getOrDefault(token.id(), 0L);
  }

  Optional<Caller> caller(String secret) {
    Token token = byHash.get(Random.hash(secret));
    if (token == null || token.revoked() || token.untilMicros() < micros()) {
      return Optional.empty();
    }
    usedMicros.put(token.id(), micros());
    Set<Right> rights = token.rights().stream().map(Right::valueOf).collect(Collectors.toSet());
    return Optional.of(new Caller(token.name(), rights, "", ""));
  }

  /** {@code rights} by name; looking is always among them. */
  public synchronized Made add(String name, Collection<String> rights, int days, String by) {
    Check.text("name", name);
    Check.within("days", days, 1, MOST_DAYS);
    Set<String> wanted = rights.stream().map(Tokens::right).collect(Collectors.toSet());
    wanted.add(Right.LOOK.name());
    String secret = PREFIX + Random.random();
    long until = micros() + Duration.ofDays(days).toMillis() * 1_000;
    Token token = new Token(0, name.strip(), Random.hash(secret), wanted, until, false);
    Token made = kept.add(token, change(token, by, String.join(", ", wanted)));
    byHash = read();
    return new Made(made, secret);
  }

  private static String right(String name) {
    return Arrays.stream(Right.values())
        .filter(each -> each != Right.ANYONE && each.name().equalsIgnoreCase(name.strip()))
        .findFirst()
        .map(Enum::name)
        .orElseThrow(() -> new BadInput("rights", name, "is not a right", all(Right.values())));
  }

  private static String all(Right... rights) {
    return Arrays.stream(rights)
        .skip(1)
        .map(each -> each.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }

  public synchronized void revoke(long id, String by) {
    Token token =
        all().stream()
            .filter(each -> each.id() == id)
            .findFirst()
            .orElseThrow(
                () -> new BadInput("token", id, "does not exist", "the number of a token"));
    kept.revoke(id, change(token, by, "revoked"));
    byHash = read();
  }

  private Change change(Token token, String by, String to) {
    return new Change(0, micros(), by, "token " + token.name(), "", to, "");
  }

  private long micros() {
    return clock.millis() * 1_000;
  }
}
