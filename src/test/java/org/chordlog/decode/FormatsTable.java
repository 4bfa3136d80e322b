package org.chordlog.decode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.LongFunction;

/** Formats of indicators, most of them invented, and what is proposed for each: as a table. */
final class FormatsTable {
  private static final int FRAMES = 80;
  private static final int LEAST_VALUES = 4;

  /** Half of the coarsest step that is sent here. */
  private static final long ROUNDED_NM = 5_100;

  /** What became of a format. */
  enum Result {
    RIGHT,
    /** Wrong scale or unit, and asked to be confirmed. */
    ASKED,
    NONE,
    SILENTLY_WRONG
  }

  /** One format: thousandths of a millimetre to what is sent. */
  static final Map<String, LongFunction<String>> FORMATS = new LinkedHashMap<>();

  private static void lines(String name, String form) {
    FORMATS.put(name, m -> String.format(Locale.ROOT, form, m / 1000.0));
  }

  private static void inches(String name, String form) {
    FORMATS.put(name, m -> String.format(Locale.ROOT, form, m / 25_400.0));
  }

  static {
    lines("lead_spaces", "%9.3f\r\n");
    FORMATS.put("plus_blank", m -> sign(m) + String.format(Locale.ROOT, "%7.3f\r\n", size(m)));
    lines("comma_lf", "%9.3f\n");
    FORMATS.computeIfPresent("comma_lf", (n, f) -> m -> f.apply(m).replace('.', ','));
    lines("glued_mm_cr", "%.3fmm\r");
    inches("glued_in_lf", "%.4fin\n");
    inches("inch_quote", "%.5f\"\r\n");
    inches("inch_upper", "%.4f INCH\r\n");
    FORMATS.put("um_utf8", m -> m + " \u00C2\u00B5m\r\n");
    FORMATS.put("um_greek", m -> m + " \u00CE\u00BCm\r\n");
    FORMATS.put("um_cp437", m -> m + " \u00E6m\r\n");
    FORMATS.put("um_plain", m -> m + " um\r\n");
    FORMATS.put("um_decimal", m -> m + ".0 um\r\n");
    FORMATS.put("no_lead_zero", m -> sign(m) + bare(m) + "\r\n");
    lines("stx_cr", "\u0002%+08.3f\r");
    lines("ident_glued", "01A%+010.3f\r");
    lines("ident_addr2", "ID07 %+09.3f mm\r\n");
    lines("trail_status_fixed", "%+09.3f N\r\n");
    FORMATS.put("two_in_line", m -> String.format(Locale.ROOT, "A:%+07.3f B:-01.049\r\n", m / 1e3));
    lines("two_alternate", "CH1 %+.3f\r\n");
    FORMATS.put("counts_um", m -> String.format(Locale.ROOT, "%+07d\r\n", m));
    FORMATS.put("counts_half_um", m -> 2 * m + "\r\n");
    FORMATS.put("sci", m -> String.format(Locale.ROOT, "%+.5E\r\n", m / 1000.0));
    FORMATS.put("sci_m", m -> String.format(Locale.ROOT, "%+dE-3\r\n", m));
    lines("temp_same_line", "%+07.3f mm  21.4 C\r\n");
    lines("temp_first", "21.4;%+07.3f\r\n");
    FORMATS.put("json_line", m -> "{\"v\": " + m / 1000.0 + "}\n");
    FORMATS.put(
        "json_rich",
        m ->
            "{\"id\": \"g7\", \"seq\": "
                + (1 + Math.abs(m) % 900)
                + ", \"v\": "
                + m / 1000.0
                + ", \"unit\": \"mm\", \"t\": 21.3}\n");
    lines("csv_time_first", "2026-11-25 21:24:34;%.3f\r\n");
    lines("csv_time_comma", "21:24:34,%.3f,mm\r\n");
    FORMATS.put("csv_ms_first", m -> String.format(Locale.ROOT, "%d,%+.3f\r\n", m * m, m / 1e3));
    lines("tabbed", "\t%+.3f\tmm\r\n");
    lines("semicolon_end", "%+.3f;\r\n");
    lines("two_short_integers", "G1 C2 %+.3f mm\r\n");
    lines("eot_line", "%+.3f mm\u0004\r\n");
    lines("fixed_no_end", "%+08.3f");
    lines("plain_two_decimals_mm", "%.2f mm\r\n");
    lines("sign_after_blanks", "    %+.3f\r\n");
    for (BuiltInProfile built : BuiltInProfile.values()) {
      FORMATS.put(built.plainName(), m -> text(Sender.frame(built, m)));
    }
  }

  private static String text(byte[] bytes) {
    return Bytes.text(bytes, 0, bytes.length);
  }

  private static String sign(long microns) {
    return microns < 0 ? "-" : "+";
  }

  private static double size(long microns) {
    return Math.abs(microns) / 1000.0;
  }

  private static String bare(long microns) {
    return String.format(Locale.ROOT, "%.3f", size(microns)).replaceFirst("^0", "");
  }

  private FormatsTable() {}

  static List<Arrival> stream(LongFunction<String> format, long[] microns) {
    List<Arrival> stream = new ArrayList<>();
    byte[] tail = Bytes.of(format.apply(7777));
    stream.add(new Arrival(0, Bytes.copy(tail, tail.length / 2, tail.length)));
    for (int i = 0; i < microns.length; i++) {
      stream.add(new Arrival((i + 1) * 50_000_000L, Bytes.of(format.apply(microns[i]))));
    }
    return stream;
  }

  static long[] pushed(long seed) {
    Random random = new Random(seed);
    return random.longs(FRAMES, -3_000, 9_000).toArray();
  }

  static Result result(String name) {
    long[] microns = pushed(5);
    List<Proposal> proposals =
        Proposals.of(stream(Objects.requireNonNull(FORMATS.get(name)), microns), null);
    if (proposals.isEmpty()) {
      return Result.NONE;
    }
    Proposal best = proposals.get(0);
    if (reads(best, microns)) {
      return Result.RIGHT;
    }
    return best.assumptions().isEmpty() ? Result.SILENTLY_WRONG : Result.ASKED;
  }

  /** Whether the newest of one of its channels are what was sent, within what was rounded. */
  private static boolean reads(Proposal proposal, long[] microns) {
    for (int channel = 0; channel <= 9; channel++) {
      int wanted = channel;
      List<Decoded.Value> values =
          proposal.values().stream().filter(v -> v.channel() == wanted).toList();
      boolean all = values.size() >= LEAST_VALUES && proposal.refused() <= 3;
      for (int i = 0; all && i < values.size(); i++) {
        long off = values.get(values.size() - 1 - i).valueNm() - microns[FRAMES - 1 - i] * 1_000;
        all = Math.abs(off) <= ROUNDED_NM;
      }
      if (all) {
        return true;
      }
    }
    return false;
  }

  /** Prints the table. */
  public static void main(String[] arguments) {
    System.out.println("| format | sent for 5.123 mm | result | proposed |\n|---|---|---|---|");
    FORMATS.forEach(
        (name, format) -> {
          List<Proposal> proposals = Proposals.of(stream(format, pushed(5)), null);
          System.out.printf(
              Locale.ROOT,
              "| %s | `%s` | %s | %s |%n",
              name,
              format.apply(5123).replaceAll("[^ -~]", "."),
              result(name),
              proposals.isEmpty() ? "" : shown(proposals.get(0)));
        });
  }

  private static String shown(Proposal p) {
    return p.name()
        + " "
        + p.profile().pattern()
        + " "
        + p.profile().unit()
        + " "
        + p.assumptions()
        + String.format(Locale.ROOT, " %.2f refused %d", p.confidence(), p.refused());
  }
}
