package org.chordlog.decode;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongFunction;

/** Formats of indicators, most of them invented, and what is proposed for each: as a table. */
public final class FormatsTable {
  private static final int FRAMES = 80;
  private static final int PUSHES = 3;

  /** Half of the coarsest step that is sent here. */
  private static final long ROUNDED_NM = 5_100;

  /** What became of a format. */
  enum Result {
    /** The first proposal reads what was sent. */
    RIGHT,
    /** Another of those shown does; the person picks the one that shows what the indicator does. */
    OFFERED,
    /** None does, and the first asks for what it assumed. */
    ASKED,
    NONE,
    /** The first reads something else and asks nothing. */
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
    moreText();
    mixedLines();
    notText();
    for (BuiltInProfile built : BuiltInProfile.values()) {
      FORMATS.put(built.plainName(), m -> text(Sender.frame(built, m)));
    }
  }

  private static void moreText() {
    FORMATS.put("stx_etx_sum", m -> marked(signed(m) + " mm"));
    FORMATS.put("nmea_checked", m -> checked("XXX," + m / 1000.0));
    FORMATS.put("nmea_metres", m -> checked("XXDPT," + signed(m) + ",M"));
    lines("trail_status_glued", "%+08.3fS\r\n");
    FORMATS.put("trail_status_varies", m -> signed(m) + (m % 7 == 0 ? " M" : " H") + "\r\n");
    FORMATS.put("lead_status_varies", m -> (m % 5 == 0 ? "M " : "S ") + signed(m) + "\r\n");
    FORMATS.put("counts_10um", m -> String.format(Locale.ROOT, "%+06d\r\n", Math.round(m / 10.0)));
    FORMATS.put("counts_tenth_um", m -> String.format(Locale.ROOT, "%+08d\r\n", m * 10));
    FORMATS.put(
        "counts_tenth_mil", m -> String.format(Locale.ROOT, "%d\r\n", Math.round(m / 2.54)));
    FORMATS.put("sequence_and_counts", m -> 1000 + counted() + " " + m + "\r\n");
    FORMATS.put("two_by_blank", m -> signed(m) + " " + signed(1250) + "\r\n");
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
    FORMATS.put("hex_sixteen", m -> String.format("%04X\r\n", (short) m & 0xFFFF));
    FORMATS.put("hex_lower", m -> String.format("%08x\n", (int) m));
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
    FORMATS.put(
        "temperature_between",
        m -> "D " + signed(m) + " mm\r\n" + (m % 4 == 0 ? "T 21.4 C\r\n" : ""));
    FORMATS.put(
        "heading_between", m -> (m % 6 == 0 ? "No. Depth\r\n" : "") + "  1 " + signed(m) + "\r\n");
    FORMATS.put("blank_lines", m -> "\r\n" + signed(m) + "\r\n\r\n");
    FORMATS.put(
        "three_axes",
        m ->
            String.format(
                Locale.ROOT, "X=%8.3f\r\nY=%8.3f\r\nZ=%8.3f\r\n", 1.5, m / 1000.0, 100.25));
    FORMATS.put("two_alternate_both", m -> "CH1 " + signed(m) + "\r\nCH2 " + signed(1049) + "\r\n");
  }

  private static void notText() {
    FORMATS.put("bin32_low_sync", m -> "\u00AAU\u001E" + low(m, 4));
    FORMATS.put("bin32_high_sum", m -> summed("\u00A5" + high(m, 4)));
    FORMATS.put("bin_float_between", m -> "~" + low(Float.floatToIntBits(m / 1000f), 4) + "~");
    FORMATS.put("bin16_high_sync", m -> "\u00AA\u00BB" + high(m, 2));
    FORMATS.put("bin24_low_sum", m -> summed("\u00A5Z" + low(m, 3)));
    FORMATS.put("bin32_pauses", m -> high(m, 4));
    FORMATS.put("packed_sign_last", m -> "\u00F0\u00F1" + packed(m));
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

  /** A plunger pushed in and out by hand, from -3 mm to 9 mm. */
  static long[] pushed(long seed) {
    Random random = new Random(seed);
    long[] microns = new long[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      double turn = 2 * Math.PI * i / FRAMES * PUSHES + random.nextDouble() * 0.1;
      microns[i] = Math.round(3_000 - 6_000 * Math.cos(turn) + random.nextGaussian());
    }
    return microns;
  }

  static Result result(String name) {
    List<Proposal> proposals = proposals(name);
    if (proposals.isEmpty()) {
      return Result.NONE;
    }
    int right = right(name, proposals);
    if (right >= 0) {
      return right == 0 ? Result.RIGHT : Result.OFFERED;
    }
    return proposals.get(0).assumptions().isEmpty() ? Result.SILENTLY_WRONG : Result.ASKED;
  }

  /** Every profile that is proposed for any of the formats. */
  public static List<FrameProfile> proposedProfiles() {
    return FORMATS.keySet().stream()
        .flatMap(name -> proposals(name).stream())
        .map(Proposal::profile)
        .distinct()
        .toList();
  }

  static List<Proposal> proposals(String name) {
    return Proposals.of(stream(Objects.requireNonNull(FORMATS.get(name)), pushed(5)), null);
  }

  /** Place of the first that reads another stream of that format right, or -1. */
  static int right(String name, List<Proposal> proposals) {
    for (int i = 0; i < proposals.size(); i++) {
      if (channelRead(name, proposals.get(i).profile()) >= 0) {
        return i;
      }
    }
    return -1;
  }

  /**
   * The channel on which that profile reads each depth of a new stream, within what was rounded; -1
   * for none. The first frame may be refused, since it may have lost its beginning.
   */
  static int channelRead(String name, FrameProfile profile) {
    long[] microns = pushed(9);
    Map<Integer, List<Long>> read = new TreeMap<>();
    Decoder decoder = profile.decoder();
    for (Arrival a : stream(Objects.requireNonNull(FORMATS.get(name)), microns)) {
      decoder.feed(a.bytes(), 0, a.bytes().length, a.monotonicNanos(), d -> take(d, read));
    }
    decoder.idle(Long.MAX_VALUE / 2, d -> take(d, read));
    return read.entrySet().stream()
        .filter(channel -> agrees(channel.getValue(), microns))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(-1);
  }

  private static void take(Decoded decoded, Map<Integer, List<Long>> read) {
    if (decoded instanceof Decoded.Value value) {
      read.computeIfAbsent(value.channel(), c -> new ArrayList<>()).add(value.valueNm());
    }
  }

  private static boolean agrees(List<Long> read, long[] microns) {
    boolean all = read.size() >= FRAMES - 2 && read.size() <= FRAMES;
    for (int i = 1; all && i <= read.size(); i++) {
      long off = read.get(read.size() - i) - microns[FRAMES - i] * 1_000;
      all = Math.abs(off) <= ROUNDED_NM;
    }
    return all;
  }

  /** Prints the table. */
  public static void main(String[] arguments) {
    System.out.println("| format | sent for 5.123 mm | result | proposed |\n|---|---|---|---|");
    Map<Result, Integer> counts = new EnumMap<>(Result.class);
    FORMATS.forEach(
        (name, format) -> {
          List<Proposal> proposals = proposals(name);
          Result result = result(name);
          counts.merge(result, 1, Integer::sum);
          System.out.printf(
              Locale.ROOT,
              "| %s | `%s` | %s | %s |%n",
              name,
              format.apply(5123).replaceAll("[^ -~]", "."),
              result,
              proposals.isEmpty() ? "" : shown(proposals.get(Math.max(0, right(name, proposals)))));
        });
    System.out.println(FORMATS.size() + " formats: " + counts);
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
