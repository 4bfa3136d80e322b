package org.chordlog.cli.device;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Proposal;
import org.chordlog.decode.Proposals;
import org.chordlog.measure.Length;
import org.chordlog.station.PortSearch.Heard;

/** Prints proposals for a person. */
final class ProposalText {
  private ProposalText() {}

  static void print(Heard heard, PrintWriter out) {
    if (heard.stream().isEmpty()) {
      out.println(
          "Nothing came. Is the indicator on, set to send, and its cable in? Does it need its data"
              + " button pressed, or a --request?");
      return;
    }
    if (Proposals.standsStill(heard.stream())) {
      out.println(
          "The value did not change, and a standing value does not show its form. Move the plunger"
              + " in and out while listening.");
      return;
    }
    if (heard.proposals().isEmpty()) {
      out.println("No profile fits what came at " + LiveText.describe(heard.link()) + ".");
      return;
    }
    out.println("Proposed for " + LiveText.describe(heard.link()) + ", the best first:");
    heard.proposals().forEach(p -> print(p, out));
  }

  private static void print(Proposal p, PrintWriter out) {
    out.printf(
        Locale.ROOT,
        "  %.2f  %s  (%d frames read, %d refused)%n",
        p.confidence(),
        p.name(),
        p.frames(),
        p.refused());
    out.println("        " + HeardJson.profile(p.profile()));
    if (!p.assumptions().isEmpty()) {
      out.println("        to be confirmed: " + String.join("; ", p.assumptions()));
    }
    out.println(
        "        would read "
            + p.values().stream().map(ProposalText::value).collect(Collectors.joining(", ")));
  }

  private static String value(Decoded.Value value) {
    return String.format(Locale.ROOT, "%+.4f mm", Length.mm(value.valueNm()))
        + (value.channel() == 0 ? "" : " (channel " + value.channel() + ")");
  }
}
