package org.chordlog.cli.device;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.decode.Decoded;
import org.chordlog.decode.Proposal;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthUnit;

/** Prints proposals side by side for a person to compare with the indicator. */
final class ProposalText {
  private ProposalText() {}

  static void print(FoundAtPort found, PrintWriter out) {
    if (found.came() == 0) {
      out.println(
          "Nothing came. Is the indicator on, set to send, and its cable in? Does it need its data"
              + " button pressed, a --request, or --modbus?");
      return;
    }
    if (found.standsStill()) {
      out.println(
          "The value did not change, and a standing value does not show its form. Move the plunger"
              + " in and out while listening.");
      return;
    }
    if (found.proposals().isEmpty()) {
      out.println("No profile fits what came at " + LiveText.describe(found.link()) + ".");
      return;
    }
    compared(found, out);
  }

  private static void compared(FoundAtPort found, PrintWriter out) {
    out.println(
        "At "
            + LiveText.describe(found.link())
            + " it may be read like this. The right one shows what the indicator showed last:");
    List<Proposal> proposals = found.proposals();
    for (int i = 0; i < proposals.size(); i++) {
      out.printf(Locale.ROOT, "%3d  %s%n", i + 1, newest(proposals.get(i)));
    }
    for (int i = 0; i < proposals.size(); i++) {
      out.println();
      print(i + 1, proposals.get(i), out);
    }
  }

  /** The newest value of each channel. */
  private static String newest(Proposal p) {
    return p.channels().stream()
        .map(channel -> p.values().stream().filter(v -> v.channel() == channel).toList())
        .map(values -> value(values.get(values.size() - 1)))
        .collect(Collectors.joining(", "));
  }

  private static void print(int number, Proposal p, PrintWriter out) {
    out.printf(
        Locale.ROOT,
        "%3d  %.2f  %s  (%d frames read, %d refused)%n",
        number,
        p.confidence(),
        p.name(),
        p.frames(),
        p.refused());
    out.println("     " + HeardJson.profile(p.profile()));
    if (!p.assumptions().isEmpty()) {
      out.println("     to be confirmed: " + String.join("; ", p.assumptions()));
    }
    out.println(
        "     would read "
            + p.values().stream().map(ProposalText::value).collect(Collectors.joining(", ")));
  }

  private static String value(Decoded.Value value) {
    return asShown(Length.mm(value.valueNm()), value.unit())
        + (value.channel() == 0 ? "" : " (channel " + value.channel() + ")");
  }

  /** In the unit that the indicator shows, and in mm. */
  private static String asShown(double mm, LengthUnit unit) {
    String inMm = Decimals.signed(mm, 4) + " mm";
    return switch (unit) {
      case MM -> inMm;
      case UM -> Decimals.signed(1000 * mm, 1) + " µm = " + inMm;
      case INCH -> Decimals.signed(mm / Length.mm(unit.nanometres()), 5) + " in = " + inMm;
    };
  }
}
