package org.chordlog.web.http;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * How others reach the service: {@code names} by which browsers may call it besides addresses, in
 * small letters; {@code proxies} whose word about the caller's address, name and scheme counts;
 * {@code tls} null where it is served unencrypted; {@code accounts} whether people sign in; {@code
 * provider} the settings file of a provider at which they can, null where there is none; {@code
 * notice} what they read before that, empty for nothing.
 */
public record Reach(
    Set<String> names,
    List<AddressRange> proxies,
    @Nullable TlsFiles tls,
    boolean accounts,
    @Nullable Path provider,
    String notice) {
  public static final Reach PLAIN = new Reach(Set.of(), List.of(), null);
  private static final String FORM = "[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?";

  public Reach {
    names = names.stream().map(each -> each.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    names.forEach(Reach::require);
    proxies = List.copyOf(proxies);
  }

  /** Without accounts. */
  public Reach(Set<String> names, List<AddressRange> proxies, @Nullable TlsFiles tls) {
    this(names, proxies, tls, false, null, "");
  }

  /** The same where people sign in. */
  public Reach withAccounts() {
    return new Reach(names, proxies, tls, true, provider, notice);
  }

  /** The same where people sign in, also at the provider of that settings file. */
  public Reach withProvider(Path file) {
    return new Reach(names, proxies, tls, true, file, notice);
  }

  /** The same with that text on the page Sign in. */
  public Reach withNotice(String text) {
    return new Reach(names, proxies, tls, accounts, provider, text);
  }

  private static void require(String name) {
    if (!name.matches(FORM)) {
      throw new BadInput(
          "--host-name", name, "is not a name of a host", "as chordlog.example, without a port");
    }
  }

  /** Whether that address is one of the proxies. */
  public boolean trusts(String address) {
    return proxies.stream().anyMatch(each -> each.holds(address));
  }
}
