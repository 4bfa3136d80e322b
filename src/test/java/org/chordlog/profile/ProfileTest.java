package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;

final class ProfileTest {
  private static Profile some(int bins, long seed) {
    Random random = new Random(seed);
    int[] counts = new int[bins];
    int[] depths = new int[bins];
    int[] places = new int[bins];
    int[] flags = new int[bins];
    for (int i = 0; i < bins; i++) {
      counts[i] = random.nextInt(5) == 0 ? 0 : 1 + random.nextInt(Profile.MOST_COUNT);
      if (counts[i] > 0) {
        depths[i] = random.nextInt(200_000) - 100_000;
        places[i] = random.nextInt(Profile.PLACES);
        flags[i] = random.nextInt(4);
      }
    }
    List<ProfileEvent> events = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      ProfileEvent.Kind[] kinds = ProfileEvent.Kind.values();
      events.add(
          new ProfileEvent(
              kinds[random.nextInt(kinds.length)], random.nextLong() >> 20, random.nextInt()));
    }
    ProfileFacts facts =
        new ProfileFacts(
            random.nextInt(1 << 30), 5_000_000, 100, random.nextInt(1 << 30), 7, events);
    return new Profile(facts, random.nextInt(2000), counts, depths, places, flags);
  }

  @Property
  void comesBackToTheLastBit(@ForAll @IntRange(max = 3000) int bins, @ForAll long seed) {
    Profile profile = some(bins, seed);
    assertEquals(profile, Profile.unpacked(profile.packed()));
  }

  @Property
  void damageIsRefusedInOneSentence(@ForAll long seed, @ForAll @IntRange(max = 400) int at) {
    byte[] packed = some(100, seed).packed();
    packed[at % packed.length] ^= (byte) (1 + (seed & 0x7F));
    try {
      assertEquals(some(100, seed), Profile.unpacked(packed), "harmless, as in a bit not used");
    } catch (BadInput refusal) {
      assertEquals(1, String.valueOf(refusal.getMessage()).lines().count());
    }
    byte[] half = Arrays.copyOf(packed, packed.length / 2);
    assertThrows(BadInput.class, () -> Profile.unpacked(half));
    assertThrows(BadInput.class, () -> Profile.unpacked(new byte[0]));
  }

  @Test
  void theSameSamplesGiveTheSameProfileAndReading() {
    PieceRun first = run();
    PieceRun second = run();
    assertEquals(first, second);
    PieceEvaluation evaluation = new PieceEvaluation(Streams.usualSettings());
    assertEquals(
        evaluation.of(first),
        evaluation.of(Profile.unpacked(second.profile().packed()), second.part()));
  }

  private static PieceRun run() {
    Streams stream = Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 1800));
    Random noise = new Random(4);
    stream.go(600, 100);
    for (int i = 0; i < 500; i++) {
      stream.seconds += 0.02;
      stream.placeMm += 2;
      stream.value(2.78 + 0.002 * noise.nextGaussian());
    }
    return stream.go(2300, 100).only();
  }

  @Test
  void widerBinsWhereValuesAreFurtherApart() {
    Streams stream = Streams.usual().piece(3000, Streams.bent(3000, 250, 60, 1800));
    stream.rate = 5;
    stream.rest(2);
    Profile profile = stream.go(3300, 200).only().profile();
    assertEquals(40, profile.facts().widthMm());
    assertEquals(40, profile.facts().pitchMm(), 1);
    for (int i = 1; i < profile.bins() - 1; i++) {
      assertEquals(1, profile.count(i), 1, "bin " + i);
    }
  }

  @Test
  void aShallowDepthIsKeptInFinerSteps() {
    Streams stream = Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 15_000));
    assertEquals(50, stream.go(2300, 100).only().profile().facts().quantumNm());
    Streams deep = Streams.usual().piece(2000, Streams.bent(2000, 250, 60, 1800));
    assertEquals(100, deep.go(2300, 100).only().profile().facts().quantumNm());
  }
}
