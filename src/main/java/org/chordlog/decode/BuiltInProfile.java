package org.chordlog.decode;

import static org.chordlog.decode.NumberForm.Mark.COMMA;
import static org.chordlog.decode.NumberForm.Mark.POINT;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.chordlog.decode.NumberForm.Sign;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;

/** Generic profiles under plain names; each has a row in the README. */
@SuppressWarnings("ImmutableEnumChecker") // profiles are records of values and copied maps
public enum BuiltInProfile {
  /** {@code +05.123} and a line end, in mm. */
  SIGNED_MM_LINES(
      FrameProfile.lines(new NumberForm(POINT, Sign.ALWAYS, null, null), LengthUnit.MM)),
  /** {@code -5.123 mm} or {@code 0.2017 in}: each line names its unit. */
  UNIT_LINES(FrameProfile.lines(NumberForm.DECIMAL, null)),
  /** {@code +05,123}: decimal comma, in mm. */
  COMMA_MM_LINES(FrameProfile.lines(new NumberForm(COMMA, Sign.ALWAYS, null, null), LengthUnit.MM));

  private final FrameProfile profile;

  BuiltInProfile(FrameProfile profile) {
    this.profile = profile;
  }

  public FrameProfile profile() {
    return profile;
  }

  /** The name in station files and on the page, as {@code signed-mm-lines}. */
  public String plainName() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** The profile of that plain name. */
  public static BuiltInProfile named(String name) {
    return Arrays.stream(values())
        .filter(p -> p.plainName().equals(name))
        .findFirst()
        .orElseThrow(() -> new BadInput("profile", name, "is no built-in profile", names()));
  }

  private static String names() {
    return Arrays.stream(values()).map(BuiltInProfile::plainName).collect(Collectors.joining(", "));
  }
}
