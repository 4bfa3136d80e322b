package org.chordlog.web.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.chordlog.measure.BadInput;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class AddressRangeTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "name",
        "999.1.1.1",
        "10.1.1",
        "10.01.1.1",
        "::::",
        "[::1",
        "::1]",
        "1:2",
        ".:1",
        "a:b"
      })
  void whatIsNoAddressIsNotHeldAndNoRange(String text) {
    assertFalse(AddressRange.isAddress(text));
    assertFalse(AddressRange.read("0.0.0.0/0").holds(text));
    assertFalse(AddressRange.read("::/0").holds(text));
    assertThrows(BadInput.class, () -> AddressRange.read(text));
  }

  @ParameterizedTest
  @CsvSource({
    "10.0.0.0/8, 10.255.0.1, true",
    "10.0.0.0/8, 11.0.0.1, false",
    "10.1.2.3, 10.1.2.3, true",
    "10.1.2.3, ::ffff:10.1.2.3, true",
    "2001:db8::/32, 2001:DB8:1::2, true",
    "2001:db8::/32, [2001:db8:1::2], true",
    "::/0, 10.1.2.3, false"
  })
  void holdsWhatSharesItsFirstBits(String range, String address, boolean holds) {
    assertEquals(holds, AddressRange.read(range).holds(address));
  }
}
