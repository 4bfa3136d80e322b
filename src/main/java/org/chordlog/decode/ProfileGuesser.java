package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Profiles for bodies of one layout. */
final class ProfileGuesser {
  private ProfileGuesser() {}

  static List<Candidate> of(FramingCandidates.Cut cut, FrameBodies.Layout layout) {
    PatternGuess places = new PatternGuess(layout);
    if (places.values().isEmpty()) {
      return List.of();
    }
    String rest = layout.text().replace(String.valueOf(FrameBodies.PLACE), "").strip();
    boolean named = new UnitTexts(Map.of()).of(Bytes.of(rest), 0, rest.length()) != null;
    boolean plain =
        layout.text().indexOf(FrameBodies.PLACE) == layout.text().lastIndexOf(FrameBodies.PLACE)
            && (rest.isEmpty() || named)
            && layout.text().strip().charAt(0) == FrameBodies.PLACE;
    String pattern = plain ? "" : places.pattern();
    boolean unitInFrame = plain ? named : pattern.contains("(?P<unit>");
    NumberForm form = new NumberGuess(places.valueTexts(), unitInFrame).form();
    List<Candidate> out = new ArrayList<>();
    for (Assumed assumed : assumed(form, unitInFrame)) {
      out.add(
          new Candidate(
              FrameProfile.of(cut.framing(), pattern, form, assumed.unit, Map.of(), cut.checksum()),
              assumed.trust,
              assumed.texts));
    }
    return out;
  }

  private record Assumed(@Nullable LengthUnit unit, double trust, List<String> texts) {}

  /** Three decimals or fewer are mm, more are inches: common practice, no source. */
  private static List<Assumed> assumed(NumberForm form, boolean unitInFrame) {
    if (unitInFrame) {
      return List.of(new Assumed(null, 1, List.of()));
    }
    Integer decimals = form.decimals();
    boolean many = decimals != null && decimals > 3;
    double share = form.mark() == NumberForm.Mark.NONE ? 0.6 : 0.9;
    List<String> scale =
        form.mark() == NumberForm.Mark.NONE ? List.of("one count is 0.001 of the unit") : List.of();
    return List.of(
        new Assumed(LengthUnit.MM, share * (many ? 0.4 : 1), with(scale, "the unit is mm")),
        new Assumed(LengthUnit.INCH, share * (many ? 1 : 0.4), with(scale, "the unit is inch")));
  }

  private static List<String> with(List<String> some, String one) {
    List<String> all = new ArrayList<>(some);
    all.add(one);
    return all;
  }
}
