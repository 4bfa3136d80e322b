package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.net.InetAddress;
import org.junit.jupiter.api.Test;

final class ShownAddressTest {
  @Test
  void anAddressOfItsOwnIsShownAsItIs() {
    assertEquals("127.0.0.1", ShownAddress.of("127.0.0.1"));
    assertEquals("[::1]", ShownAddress.of("::1"));
    assertEquals("localhost", ShownAddress.of("localhost"));
  }

  @Test
  void allAddressesAreShownAsOneThatCanBeOpened() throws Exception {
    for (String all : new String[] {"0.0.0.0", "::"}) {
      assertFalse(InetAddress.getByName(ShownAddress.of(all)).isAnyLocalAddress(), all);
    }
  }
}
