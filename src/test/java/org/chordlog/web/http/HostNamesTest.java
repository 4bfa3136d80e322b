package org.chordlog.web.http;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class HostNamesTest {
  /** Browsers write the name of a host in small letters, however it was typed. */
  @Test
  void theNameThatItListensAtIsAnsweredInAnyCase() throws Exception {
    String name = InetAddress.getLocalHost().getHostName();
    for (String set : Set.of(name.toUpperCase(Locale.ROOT), name.toLowerCase(Locale.ROOT))) {
      WebSettings settings = new WebSettings(set, 8080, "0123456789abcdef", 32, 32, 65_536);
      HostNames names = new HostNames(settings, Set::of);
      assertTrue(names.has(name.toLowerCase(Locale.ROOT) + ":8080"), set);
      assertTrue(names.has(name.toUpperCase(Locale.ROOT)), set);
      assertFalse(names.has("other.example:8080"), set);
    }
  }
}
