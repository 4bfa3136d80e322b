package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** From the bodies of frames to profiles that could read them. */
final class FrameBodies {
  private FrameBodies() {}

  static List<Candidate> candidates(
      FramingCandidates.Cut cut, boolean sevenBit, @Nullable Polling polling) {
    List<Candidate> found = new ArrayList<>(HexGuess.of(cut));
    for (Layout layout : Layout.of(cut.bodies())) {
      found.addAll(ProfileGuesser.of(cut, layout));
      found.addAll(SignDigitGuess.of(cut, layout));
    }
    return found.stream()
        .map(
            c ->
                new Candidate(
                    c.profile().withSevenBit(sevenBit).withPolling(polling),
                    c.trust(),
                    c.assumptions()))
        .toList();
  }
}
