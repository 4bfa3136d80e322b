package org.chordlog.decode;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongFunction;

/** Formats of indicators, most of them invented: what each sends for a depth. */
final class Formats {
  /** One format: thousandths of a millimetre to what is sent. */
  static final Map<String, LongFunction<String>> ALL = new LinkedHashMap<>();

  private Formats() {}

  private static void lines(String name, String form) {
    ALL.put(name, m -> String.format(Locale.ROOT, form, m / 1000.0));
  }

  private static void inches(String name, String form) {
    ALL.put(name, m -> String.format(Locale.ROOT, form, m / 25_400.0));
  }

  static {
    lines("lead_spaces", "%9.3f\r\n");
    ALL.put("plus_blank", m -> sign(m) + String.format(Locale.ROOT, "%7.3f\r\n", size(m)));
    lines("comma_lf", "%9.3f\n");
    ALL.computeIfPresent("comma_lf", (n, f) -> m -> f.apply(m).replace('.', ','));
    lines("glued_mm_cr", "%.3fmm\r");
    inches("glued_in_lf", "%.4fin\n");
    inches("inch_quote", "%.5f\"\r\n");
    inches("inch_upper", "%.4f INCH\r\n");
    ALL.put("um_utf8", m -> m + " \u00C2\u00B5m\r\n");
    ALL.put("um_greek", m -> m + " \u00CE\u00BCm\r\n");
    ALL.put("um_cp437", m -> m + " \u00E6m\r\n");
    ALL.put("um_plain", m -> m + " um\r\n");
    ALL.put("um_decimal", m -> m + ".0 um\r\n");
    ALL.put("no_lead_zero", m -> sign(m) + bare(m) + "\r\n");
    lines("stx_cr", "\u0002%+08.3f\r");
    lines("ident_glued", "01A%+010.3f\r");
    lines("ident_addr2", "ID07 %+09.3f mm\r\n");
    lines("trail_status_fixed", "%+09.3f N\r\n");
    ALL.put("two_in_line", m -> String.format(Locale.ROOT, "A:%+07.3f B:-01.049\r\n", m / 1e3));
    lines("two_alternate", "CH1 %+.3f\r\n");
    ALL.put("counts_um", m -> String.format(Locale.ROOT, "%+07d\r\n", m));
    ALL.put("counts_half_um", m -> 2 * m + "\r\n");
    ALL.put("sci", m -> String.format(Locale.ROOT, "%+.5E\r\n", m / 1000.0));
    ALL.put("sci_m", m -> String.format(Locale.ROOT, "%+dE-3\r\n", m));
    lines("temp_same_line", "%+07.3f mm  21.4 C\r\n");
    lines("temp_first", "21.4;%+07.3f\r\n");
    ALL.put("json_line", m -> "{\"v\": " + m / 1000.0 + "}\n");
    ALL.put(
        "json_rich",
        m ->
            "{\"id\": \"g7\", \"seq\": "
                + (1 + Math.abs(m) % 900)
                + ", \"v\": "
                + m / 1000.0
                + ", \"unit\": \"mm\", \"t\": 21.3}\n");
    lines("csv_time_first", "2026-11-25 21:24:34;%.3f\r\n");
    lines("csv_time_comma", "21:24:34,%.3f,mm\r\n");
    ALL.put("csv_ms_first", m -> String.format(Locale.ROOT, "%d,%+.3f\r\n", m * m, m / 1e3));
    lines("tabbed", "\t%+.3f\tmm\r\n");
    lines("semicolon_end", "%+.3f;\r\n");
    lines("two_short_integers", "G1 C2 %+.3f mm\r\n");
    lines("eot_line", "%+.3f mm\u0004\r\n");
    lines("fixed_no_end", "%+08.3f");
    lines("plain_two_decimals_mm", "%.2f mm\r\n");
    lines("sign_after_blanks", "    %+.3f\r\n");
    moreText();
    mixedLines();
    notText();
    for (BuiltInProfile built : BuiltInProfile.values()) {
      ALL.put(built.plainName(), m -> text(Sender.frame(built, m)));
    }
  }

  private static void moreText() {
    ALL.put("stx_etx_sum", m -> marked(signed(m) + " mm"));
    ALL.put("dollar_checked", m -> checked("DEPTH," + m / 1000.0));
    ALL.put("dollar_metres", m -> checked("DEPTH," + signed(m) + ",M"));
    lines("trail_status_glued", "%+08.3fS\r\n");
    ALL.put("trail_status_varies", m -> signed(m) + (m % 7 == 0 ? " M" : " H") + "\r\n");
    ALL.put("lead_status_varies", m -> (m % 5 == 0 ? "M " : "S ") + signed(m) + "\r\n");
    ALL.put("counts_10um", m -> String.format(Locale.ROOT, "%+06d\r\n", Math.round(m / 10.0)));
    ALL.put("counts_tenth_um", m -> String.format(Locale.ROOT, "%+08d\r\n", m * 10));
    ALL.put("counts_tenth_mil", m -> String.format(Locale.ROOT, "%d\r\n", Math.round(m / 2.54)));
    ALL.put("sequence_and_counts", m -> 1000 + counted() + " " + m + "\r\n");
    ALL.put("two_by_blank", m -> signed(m) + " " + signed(1250) + "\r\n");
    lines("two_padded", "%9.3f   21.400\r\n");
    lines("named_padded", "DEPTH: %9.3f mm\r\n");
    lines("two_decimals_no_unit", "%.2f\r\n");
    lines("nul_end", "%+.3f\u0000");
    lines("tab_channel", "1\t%+.3f\tmm\r\n");
    lines("equals", "D=%+.3fmm\r\n");
    lines("millimetre_word", "%.3f millimetre\r\n");
    lines("upper_mm", "%.3f MM\r\n");
    inches("upper_in", "%.4f IN\r\n");
    inches("inch_unnamed", "%+.5f\r\n");
    lines("brackets", "[%8.3f]\r\n");
    lines("quoted", "\"%.3f\"\r\n");
    ALL.put("hex_sixteen", m -> String.format("%04X\r\n", (short) m & 0xFFFF));
    ALL.put("hex_lower", m -> String.format("%08x\n", (int) m));
  }

  private static final AtomicLong SENT = new AtomicLong();

  private static long counted() {
    return SENT.incrementAndGet();
  }

  private static String signed(long microns) {
    return String.format(Locale.ROOT, "%+08.3f", microns / 1000.0);
  }

  private static String marked(String text) {
    int sum = (text.chars().sum() + 3) & 0xFF;
    return "\u0002" + text + "\u0003" + String.format("%02X", sum);
  }

  private static String checked(String text) {
    int sum = text.chars().reduce(0, (a, b) -> a ^ b);
    return "$" + text + String.format("*%02X\r\n", sum);
  }

  private static void mixedLines() {
    ALL.put(
        "temperature_between",
        m -> "D " + signed(m) + " mm\r\n" + (m % 4 == 0 ? "T 21.4 C\r\n" : ""));
    ALL.put(
        "heading_between", m -> (m % 6 == 0 ? "No. Depth\r\n" : "") + "  1 " + signed(m) + "\r\n");
    ALL.put("blank_lines", m -> "\r\n" + signed(m) + "\r\n\r\n");
    ALL.put(
        "three_axes",
        m ->
            String.format(
                Locale.ROOT, "X=%8.3f\r\nY=%8.3f\r\nZ=%8.3f\r\n", 1.5, m / 1000.0, 100.25));
    ALL.put("two_alternate_both", m -> "CH1 " + signed(m) + "\r\nCH2 " + signed(1049) + "\r\n");
  }

  private static void notText() {
    ALL.put("bin32_low_sync", m -> "\u00AAU\u001E" + low(m, 4));
    ALL.put("bin32_high_sum", m -> summed("\u00A5" + high(m, 4)));
    ALL.put("bin_float_between", m -> "~" + low(Float.floatToIntBits(m / 1000f), 4) + "~");
    ALL.put("bin16_high_sync", m -> "\u00AA\u00BB" + high(m, 2));
    ALL.put("bin24_low_sum", m -> summed("\u00A5Z" + low(m, 3)));
    ALL.put("bin32_pauses", m -> high(m, 4));
    ALL.put("packed_sign_last", m -> "\u00F0\u00F1" + packed(m));
  }

  /** Five digits and C for plus, D for minus. */
  private static String packed(long microns) {
    String digits = String.format("%05d", Math.abs(microns)) + (microns < 0 ? "D" : "C");
    return high(Long.parseLong(digits, 16), 3);
  }

  private static String high(long number, int bytes) {
    StringBuilder text = new StringBuilder();
    for (int i = bytes - 1; i >= 0; i--) {
      text.append((char) ((number >> (8 * i)) & 0xFF));
    }
    return text.toString();
  }

  private static String low(long number, int bytes) {
    return new StringBuilder(high(number, bytes)).reverse().toString();
  }

  private static String summed(String text) {
    return text + (char) (text.chars().sum() & 0xFF);
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
}
