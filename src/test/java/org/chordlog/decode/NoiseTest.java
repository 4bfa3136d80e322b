package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("slow")
final class NoiseTest {
  private static final int FRAMES = 20_000;
  private static final Set<BuiltInProfile> LOOSE =
      EnumSet.of(BuiltInProfile.UNIT_LINES, BuiltInProfile.JSON_MM_LINES);

  @ParameterizedTest
  @EnumSource
  void cleanLosesNothing(BuiltInProfile built) {
    Noise clean = new Noise(built, 1, 0).run(1000);
    assertEquals(1000, clean.right);
    assertEquals(0, clean.wrong);
  }

  @ParameterizedTest
  @EnumSource
  void noiseMakesNoValueWhereTheFrameCanTell(BuiltInProfile built) {
    Noise noisy = new Noise(built, 20261125, 0.01).run(FRAMES);
    boolean checked = built.profile().checksum().kind() != Checksum.Kind.NONE;
    boolean registers = built.profile().kind() == DecoderKind.MODBUS_RTU;
    if (checked || registers) {
      assertEquals(0, noisy.wrong, noisy.row());
    } else if (!LOOSE.contains(built)) {
      assertEquals(0, noisy.wrong - noisy.wrongUntellable, noisy.row());
    }
    assertTrue(noisy.right > 0.75 * FRAMES, noisy.row());
  }

  /** The whole table; {@code mvn test -Dtest=NoiseTest -Dexcluded.groups=none -Dgroups=long}. */
  @Tag("long")
  @Test
  void table() {
    Noise.table(1_000_000, 7, 0.01);
  }
}
