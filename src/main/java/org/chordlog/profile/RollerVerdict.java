package org.chordlog.profile;

import java.util.List;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Which roller makes a ripple, over so many pieces: the ripples of those that can be seen, the
 * strongest evidence first, and what follows. Without ripples {@code unfit} says why.
 */
public record RollerVerdict(
    int pieces,
    List<RollerSight> sights,
    List<RollerRipple> ripples,
    Finding finding,
    @Nullable Sentence unfit) {
  public RollerVerdict {
    sights = List.copyOf(sights);
    ripples = List.copyOf(ripples);
  }

  /** What can be seen of that roller; null where it was not looked for. */
  public @Nullable RollerSight sight(Roller roller) {
    return sights.stream().filter(each -> each.roller().equals(roller)).findFirst().orElse(null);
  }

  /** That roller's ripple; null where it can't be told. */
  public @Nullable RollerRipple ripple(Roller roller) {
    return ripples.stream().filter(each -> each.roller().equals(roller)).findFirst().orElse(null);
  }

  /** What follows. */
  public sealed interface Finding {
    /** No roller's ripple stands out. */
    record NoRipple() implements Finding {}

    /** This one's does. */
    record Named(Roller roller) implements Finding {}

    /** One of two, which so short a length can't tell; from that length on it could, if ever. */
    record OneOfTwo(Roller first, Roller second, @Nullable Double neededMm) implements Finding {}
  }
}
