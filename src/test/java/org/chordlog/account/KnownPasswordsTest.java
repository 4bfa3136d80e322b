package org.chordlog.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Passwords that many people have are refused, whatever their capitals. */
final class KnownPasswordsTest {
  @ParameterizedTest
  @ValueSource(strings = {"trustno1", "iloveyou", "Sunshine", "letmein1", "PRINCESS", "qwertyui"})
  void aFrequentOneIsRefused(String password) {
    assertThrows(BadInput.class, () -> Passwords.require(password, "Ann"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"three wide rollers", "a long bent tube", "Żółw na rolkach"})
  void severalWordsAreNot(String password) {
    assertFalse(KnownPasswords.have(password));
    Passwords.require(password, "Ann");
  }

  /** Else a search by halves would miss some. */
  @Test
  void theListIsSortedAndLong() throws Exception {
    byte[] all;
    try (var in = KnownPasswords.class.getResourceAsStream("known-passwords.bin")) {
      all = Objects.requireNonNull(in).readAllBytes();
    }
    int rows = all.length / KnownPasswords.BYTES;
    assertTrue(rows >= 10_000 && all.length % KnownPasswords.BYTES == 0, rows + " rows");
    int descents = 0;
    for (int i = 5; i < all.length; i += 5) {
      descents += Arrays.compareUnsigned(all, i - 5, i, all, i, i + 5) < 0 ? 0 : 1;
    }
    assertEquals(0, descents);
  }
}
