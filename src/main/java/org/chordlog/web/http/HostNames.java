package org.chordlog.web.http;

import java.net.URI;
import java.util.Locale;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The names that the service answers to. A page of the internet whose name was led to this service
 * by a changed DNS entry calls it by its own name, never by an address: so addresses are answered
 * beyond loopback, and names only where they were given or the certificate has them.
 */
final class HostNames {
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
  private final WebSettings settings;
  private final Supplier<Set<String>> certified;

  HostNames(WebSettings settings, Supplier<Set<String>> certified) {
    this.settings = settings;
    this.certified = certified;
  }

  /** {@code host} as in the header of that name, with its port or without. */
  boolean has(@Nullable String host) {
    String name = name(host);
    return LOOPBACK.contains(name)
        || name.equals(settings.host().toLowerCase(Locale.ROOT))
        || settings.reach().names().contains(name)
        || (!settings.loopback() && AddressRange.isAddress(name))
        || certified.get().stream().anyMatch(each -> covers(each, name));
  }

  /** A certificate for *.shop.example covers one more label before it (RFC 6125, 6.4.3). */
  private static boolean covers(String certified, String name) {
    int dot = name.indexOf('.');
    return certified.equals(name)
        || (certified.startsWith("*.")
            && dot > 0
            && certified.substring(1).equals(name.substring(dot)));
  }

  String refusal() {
    return settings.loopback() && settings.reach().names().isEmpty()
        ? "This service answers as localhost only; the setting --host-name of serve gives it more names."
        : "This service does not answer to that name; the setting --host-name of serve gives it names.";
  }

  private static String name(@Nullable String host) {
    if (host == null) {
      return "";
    }
    int colon = host.lastIndexOf(':');
    String name = colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
    return name.toLowerCase(Locale.ROOT);
  }

  /** Whether an Origin names this host and port; the port of its scheme may be left out. */
  static boolean same(String origin, @Nullable String host) {
    try {
      URI uri = URI.create(origin);
      String authority = uri.getRawAuthority();
      String usual = "https".equals(uri.getScheme()) ? ":443" : ":80";
      return authority != null
          && host != null
          && withoutUsual(authority, usual).equals(withoutUsual(host, usual));
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private static String withoutUsual(String authority, String usualPort) {
    return authority.endsWith(usualPort)
        ? authority.substring(0, authority.length() - usualPort.length())
        : authority;
  }
}
