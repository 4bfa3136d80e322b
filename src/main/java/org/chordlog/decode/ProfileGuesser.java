package org.chordlog.decode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Profiles for bodies of one layout. */
final class ProfileGuesser {
  /** Decimals that the frames of an indicator in millimetres have at most, else inches. */
  private static final int MM_DECIMALS = 3;

  private static final double USUAL = 0.9;
  private static final double UNUSUAL = 0.36;
  private final FramingCandidates.Cut cut;
  private final Layout layout;
  private final boolean channelLetters;
  private final PatternGuess places;
  private final String pattern;
  private final boolean unitInFrame;

  private ProfileGuesser(FramingCandidates.Cut cut, Layout layout, boolean channelLetters) {
    this.cut = cut;
    this.layout = layout;
    this.channelLetters = channelLetters;
    places = new PatternGuess(layout, channelLetters);
    String rest = layout.text().replace(String.valueOf(BodyText.PLACE), "").strip();
    boolean named = new UnitTexts(Map.of()).of(Bytes.of(rest), 0, rest.length()) != null;
    boolean plain = isPlain(rest, named);
    pattern = plain ? "" : places.pattern();
    unitInFrame = plain ? named : pattern.contains("(?P<unit>");
  }

  /** One number, and behind it at most a unit. */
  private boolean isPlain(String rest, boolean named) {
    String text = layout.text();
    return text.indexOf(BodyText.PLACE) == text.lastIndexOf(BodyText.PLACE)
        && (rest.isEmpty() || named)
        && text.strip().charAt(0) == BodyText.PLACE;
  }

  static List<Candidate> of(FramingCandidates.Cut cut, Layout layout) {
    ProfileGuesser plain = new ProfileGuesser(cut, layout, false);
    if (!layout.beginsWithLetter()) {
      return plain.candidates();
    }
    List<Candidate> all = new ArrayList<>(new ProfileGuesser(cut, layout, true).candidates());
    all.addAll(plain.places.moveAsOne() ? plain.candidates() : List.of());
    return all;
  }

  private List<Candidate> candidates() {
    if (places.values().isEmpty() || pattern.length() > FramePattern.LONGEST) {
      return List.of();
    }
    NumberForm form = new NumberGuess(places.valueTexts()).form();
    return assumed(form).stream()
        .map(assumed -> new Candidate(profile(form, assumed), assumed.trust, texts(assumed)))
        .toList();
  }

  private FrameProfile profile(NumberForm form, Assumed assumed) {
    NumberForm scaled = assumed.scale == null ? form : form.withScale(assumed.scale.scale());
    return FrameProfile.of(cut.framing(), pattern, scaled, assumed.unit, Map.of(), cut.checksum())
        .toBuilder()
        .channels(channels())
        .build();
  }

  private Map<String, Integer> channels() {
    Map<String, Integer> channels = new HashMap<>();
    if (channelLetters) {
      List<String> letters = layout.letters().get(0);
      letters.forEach(letter -> channels.put(letter, letters.indexOf(letter) + 1));
    }
    return channels;
  }

  private List<String> texts(Assumed assumed) {
    List<String> texts = new ArrayList<>(assumed.texts);
    for (int i = 0; i < layout.letters().size(); i++) {
      String letters = String.join(", ", layout.letters().get(i));
      texts.add(
          i == 0 && channelLetters
              ? "the letters " + letters + " name channels"
              : "the letters " + letters + " say nothing of the depth");
    }
    return texts;
  }

  private record Assumed(
      @Nullable LengthUnit unit, @Nullable CountScales scale, double trust, List<String> texts) {}

  /** Three decimals or fewer are mm, more are inches: common practice, no source. */
  private List<Assumed> assumed(NumberForm form) {
    if (unitInFrame) {
      return List.of(new Assumed(null, null, 1, List.of()));
    }
    if (form.mark() == NumberForm.Mark.NONE && !form.exponent()) {
      return CountScales.usual().stream()
          .map(s -> new Assumed(s.unit(), s, s.trust(), List.of(s.assumption())))
          .toList();
    }
    Integer decimals = form.decimals();
    boolean many = decimals != null && decimals > MM_DECIMALS && !form.exponent();
    return List.of(
        new Assumed(LengthUnit.MM, null, many ? UNUSUAL : USUAL, List.of("the unit is mm")),
        new Assumed(LengthUnit.INCH, null, many ? USUAL : UNUSUAL, List.of("the unit is inch")));
  }
}
