package org.chordlog.verdict;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** What a station's settings are called on pages, by their keys in the station file. */
record SettingWords(String label, String unit, String hint) {
  /**
   * A row: key, label, unit, hint. Below it, indented, the values of a key that has only some:
   * those that are words already, or one and its words.
   */
  private static final String STATION =
      """
      machine | Machine
      channel | Channel that measures the depth | | 0 where the indicator has only one
      combine | Two channels make the depth
      combine.kind | Depth from two channels
        difference = first less second
        mean = mean of both
      combine.first | First channel
      combine.second | Second channel
      direction | Pushing the plunger in
        counts_up = counts up
        counts_down = counts down
      silenceSeconds | Open the port anew after silence of | s | 0: never, for a data button
      indicator | Indicator
      indicator.resolutionMm | Step | mm | Of the last digit
      indicator.permissibleErrorMm | Permissible error ± | mm | From its data sheet
      indicator.travelMm | Travel | mm
      zero | Zero
      zero.maximumAgeHours | Zero is good for | h
      zero.whenStale | Readings with an old zero
        mark = are marked
        refuse = are refused
      zero.whenMissing | Readings without a zero
        mark = are marked
        refuse = are refused
      """;

  private static final String LINK =
      """
      link | Connection
      link.port | Port
      link.host | Network address
      link.file | Recording
      link.speed | Speed of the recording | × | 0: as fast as possible
      link.rate | Rate | bit/s | As the indicator is set
      link.dataBits | Data bits | | 7 or 8
      link.parity | Parity
        none, odd, even, mark, space
      link.stopBits | Stop bits
        one
        one_and_a_half = one and a half
        two
      link.flowControl | Flow control
        none
        rts_cts = RTS and CTS
        dsr_dtr = DSR and DTR
        xon_xoff = XON and XOFF
      link.dtr | Line DTR | | Some adapters feed the indicator from it
        on, off
      link.rts | Line RTS | | Some adapters feed the indicator from it
        on, off
      link.exclusive | Keep other programs out
      link.footSwitch | Foot switch | | On which line of the port
        none
        cts = on CTS
        dsr = on DSR
      """;

  private static final String CAPTURE =
      """
      capture | When a depth is taken
      capture.mode | A depth is taken
        settled = when the bridge stands still
        extremum = at the extreme while the bridge is rocked
        trigger = on request: page, foot switch or data button
        passing = along a section that runs through
      capture.extreme | Extreme while rocked | | Lowest where the bridge is turned on a tube
        highest, lowest
      capture.everyFrame | Each value is a reading | | For a data button
      capture.restSeconds | At rest for | s | Left empty: 0.4 s
      capture.bandMm | At rest within | mm | Left empty: 4 steps
      capture.leastSamples | At rest for at least | values | Left empty: 5, of slow ones 3
      capture.contactMm | On a piece from | mm | Above free air. Left empty: 20 steps
      capture.freeAirMm | Shown in free air | mm | Left empty: learned
      capture.timeoutSeconds | Time to come to rest | s | Left empty: 15 s
      capture.stuckSeconds | Report a value that stays for | s | Left empty: 120 s
      capture.leastIntervalSeconds | Between two requests | s | Left empty: 0.5 s
      """;

  private static final String FEED =
      """
      feed | Length of a section that runs through
      feed.length | Length comes from
        channel = a second value of the frame, as of a measuring wheel
        link = another port, as of an encoder with an interface of its own
        speed = a stated constant feed
        none = nowhere
      feed.link | Connection of the length
      feed.profile | How the length is sent
      feed.delayMs | Depths come later than their lengths by | ms | Left empty: found at the station
      feed.silenceSeconds | Open the length's port anew after silence of | s | 0: never
      feed.channel | Channel that counts the length
      feed.mmPerCount | One count is | mm
      feed.counterBits | Counter starts over after | bits | 0: never; 16, 32
      feed.reversed | Counter counts down
      feed.wheelFace | Face the wheel runs on | | Left empty: the measured one
        outer, inner, centreline
      feed.mmPerSecond | Constant feed | mm/s
      feed.mostMmPerSecond | Greatest feed there is | mm/s
      feed.bothWays | Pieces come from either end
      feed.pieceMm | Length of a piece | mm
      feed.leadInMm | Straight end at the front | mm
      feed.leadOutMm | Straight end at the back | mm
      feed.riseMm | Length of the rise of the bend | mm
      feed.stretchMm | Endless stock: a reading each | mm
      """;

  private static final Map<String, SettingWords> ALL = new LinkedHashMap<>();
  private static final Map<String, String> CHOICES = new LinkedHashMap<>();

  static {
    List.of(STATION, LINK, SettingWordsOfFrames.TABLE, CAPTURE, FEED).forEach(SettingWords::read);
  }

  private static void read(String table) {
    String key = "";
    for (String line : table.lines().toList()) {
      if (line.startsWith(" ")) {
        choice(key + "=", line.strip());
      } else {
        String[] cells = line.split(" *\\| *");
        key = cells[0];
        ALL.put(key, new SettingWords(cells[1], cell(cells, 2), cell(cells, 3)));
      }
    }
  }

  private static String cell(String[] cells, int at) {
    return at < cells.length ? cells[at] : "";
  }

  private static void choice(String key, String line) {
    String[] named = line.split(" = ", 2);
    if (named.length == 2) {
      CHOICES.put(key + named[0], named[1]);
      return;
    }
    for (String value : line.split(", ", -1)) {
      CHOICES.put(key + value, value);
    }
  }

  /** Labels by key. */
  static Map<String, String> labels() {
    return by(SettingWords::label);
  }

  /** Units by key; empty where the value has none. */
  static Map<String, String> units() {
    return by(SettingWords::unit);
  }

  /** Hints by key. */
  static Map<String, String> hints() {
    return by(SettingWords::hint);
  }

  /** Words by {@code key=value}, for each value of a key that has only some. */
  static Map<String, String> choices() {
    return CHOICES;
  }

  private static Map<String, String> by(Function<SettingWords, String> part) {
    Map<String, String> words = new LinkedHashMap<>();
    ALL.forEach((key, each) -> words.put(key, part.apply(each)));
    return words;
  }
}
