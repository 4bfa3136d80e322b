package org.chordlog.decode;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Patterns of frames. RE2 matches in time linear in the length of the frame, which is bounded too;
 * constructs that would need trying back and forth (back references, look-around) do not exist.
 */
final class FramePattern {
  static final int LONGEST = 300;
  static final List<String> SUFFIXES = List.of("", "1", "2", "3", "4", "5", "6", "7", "8", "9");

  private FramePattern() {}

  static Pattern compile(String pattern) {
    if (pattern.length() > LONGEST) {
      throw bad(pattern, "is too long", "at most " + LONGEST + " characters");
    }
    try {
      return Pattern.compile(pattern, Pattern.DOTALL);
    } catch (PatternSyntaxException e) {
      throw bad(pattern, "is not a pattern (" + e.getDescription() + ")", "RE2 syntax");
    }
  }

  /** Refuses a pattern from which no value with a unit can come. */
  static void check(String pattern, @Nullable LengthUnit unit) {
    if (pattern.isEmpty()) {
      return;
    }
    Map<String, Integer> groups = compile(pattern).namedGroups();
    if (SUFFIXES.stream().noneMatch(s -> groups.containsKey("value" + s))) {
      throw bad(pattern, "has no group named value", "(?P<value>...), or value1 to value9");
    }
    if (unit == null && groups.keySet().stream().noneMatch(g -> g.startsWith("unit"))) {
      throw bad(pattern, "has no group named unit", "(?P<unit>...), or a fixed unit");
    }
  }

  static boolean has(String pattern, String group) {
    return !pattern.isEmpty() && compile(pattern).namedGroups().containsKey(group);
  }

  private static BadInput bad(String pattern, String problem, String allowed) {
    return new BadInput("pattern", pattern, problem, allowed);
  }
}
