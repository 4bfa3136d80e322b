package org.chordlog.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lines between the values that say nothing of the depth, as headings or a temperature. */
final class PassedOver {
  private static final int MOST = 4;
  private static final int LEAST_OFTEN = 2;
  private static final Pattern DIGITS = Pattern.compile("[0-9]+");

  private PassedOver() {}

  /** The candidate on the stream; where it refuses lines of a steady form, also without these. */
  static Proposal tried(Candidate candidate, List<Arrival> stream) {
    List<Decoded.Damaged> refused = new ArrayList<>();
    Proposal plain = Trials.of(candidate, stream, refused::add);
    FrameProfile profile = candidate.profile();
    boolean lines = profile.kind().isText() && profile.framing().equals(Framing.LINES);
    if (!lines || profile.sevenBit() || !plain.moved() || refused.size() <= 2) {
      return plain;
    }
    Map<String, List<String>> forms = forms(refused);
    return forms.isEmpty() || forms.size() > MOST
        ? plain
        : Trials.of(without(candidate, forms), stream, damaged -> {});
  }

  /** Forms that came more than once, with the lines of each; digits alone may differ. */
  private static Map<String, List<String>> forms(List<Decoded.Damaged> refused) {
    Map<String, List<String>> forms = new HashMap<>();
    for (Decoded.Damaged each : refused) {
      String line = Bytes.text(each.raw(), 0, each.raw().length).replaceAll("[\r\n]+$", "");
      forms.computeIfAbsent(form(line), f -> new ArrayList<>()).add(line);
    }
    forms.values().removeIf(lines -> lines.size() < LEAST_OFTEN);
    forms.keySet().removeIf(form -> !form.matches("(?s).*[A-Za-z#=_-].*") || form.length() > 60);
    return forms;
  }

  private static String form(String line) {
    StringBuilder form = new StringBuilder();
    Matcher digits = DIGITS.matcher(line);
    int from = 0;
    while (digits.find()) {
      form.append(Pattern.quote(line.substring(from, digits.start()))).append("[0-9]+");
      from = digits.end();
    }
    form.append(Pattern.quote(line.substring(from)));
    return form.toString();
  }

  private static Candidate without(Candidate candidate, Map<String, List<String>> forms) {
    List<String> assumptions = new ArrayList<>(candidate.assumptions());
    forms.values().stream()
        .map(lines -> "lines such as '" + lines.get(0).strip() + "' say nothing of the depth")
        .sorted()
        .forEach(assumptions::add);
    List<String> patterns = forms.keySet().stream().sorted().toList();
    return new Candidate(
        candidate.profile().toBuilder().passOver(patterns).build(), candidate.trust(), assumptions);
  }
}
