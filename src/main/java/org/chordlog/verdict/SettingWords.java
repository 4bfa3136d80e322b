package org.chordlog.verdict;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** What a station's settings are called on pages, by their keys in the station file. */
public record SettingWords(String label, String unit, String hint) {
  private static final Map<String, SettingWords> ALL = new LinkedHashMap<>();
  private static final Map<String, String> CHOICES = new LinkedHashMap<>();

  static {
    station();
    link();
    SettingWordsOfFrames.frames(ALL, CHOICES);
    capture();
    feed();
  }

  private static void say(String key, String label, String unit, String hint) {
    ALL.put(key, new SettingWords(label, unit, hint));
  }

  private static void choice(String key, String value, String words) {
    CHOICES.put(key + "=" + value, words);
  }

  /** Values that are words already. */
  private static void themselves(String key, String... values) {
    for (String value : values) {
      choice(key, value, value);
    }
  }

  private static void station() {
    say("machine", "Machine", "", "");
    say("channel", "Channel that measures the depth", "", "0 where the indicator has only one");
    say("combine", "Two channels make the depth", "", "");
    say("combine.kind", "Depth from two channels", "", "");
    choice("combine.kind", "difference", "first less second");
    choice("combine.kind", "mean", "mean of both");
    say("combine.first", "First channel", "", "");
    say("combine.second", "Second channel", "", "");
    say("direction", "Pushing the plunger in", "", "");
    choice("direction", "counts_up", "counts up");
    choice("direction", "counts_down", "counts down");
    say(
        "silenceSeconds",
        "Open the port anew after silence of",
        "s",
        "0: never, for a data button");
    say("indicator", "Indicator", "", "");
    say("indicator.resolutionMm", "Step", "mm", "Of the last digit");
    say("indicator.permissibleErrorMm", "Permissible error ±", "mm", "From its data sheet");
    say("indicator.travelMm", "Travel", "mm", "");
    say("zero", "Zero", "", "");
    say("zero.maximumAgeHours", "Zero is good for", "h", "");
    say("zero.whenStale", "Readings with an old zero", "", "");
    say("zero.whenMissing", "Readings without a zero", "", "");
    for (String key : new String[] {"zero.whenStale", "zero.whenMissing"}) {
      choice(key, "mark", "are marked");
      choice(key, "refuse", "are refused");
    }
  }

  private static void link() {
    say("link", "Connection", "", "");
    say("link.port", "Port", "", "");
    say("link.host", "Network address", "", "");
    say("link.file", "Recording", "", "");
    say("link.speed", "Speed of the recording", "×", "0: as fast as possible");
    say("link.rate", "Rate", "bit/s", "As the indicator is set");
    say("link.dataBits", "Data bits", "", "7 or 8");
    say("link.parity", "Parity", "", "");
    themselves("link.parity", "none", "odd", "even", "mark", "space");
    say("link.stopBits", "Stop bits", "", "");
    themselves("link.stopBits", "one");
    choice("link.stopBits", "one_and_a_half", "one and a half");
    themselves("link.stopBits", "two");
    say("link.flowControl", "Flow control", "", "");
    themselves("link.flowControl", "none");
    choice("link.flowControl", "rts_cts", "RTS and CTS");
    choice("link.flowControl", "dsr_dtr", "DSR and DTR");
    choice("link.flowControl", "xon_xoff", "XON and XOFF");
    say("link.dtr", "Line DTR", "", "Some adapters feed the indicator from it");
    say("link.rts", "Line RTS", "", "Some adapters feed the indicator from it");
    themselves("link.dtr", "on", "off");
    themselves("link.rts", "on", "off");
    say("link.exclusive", "Keep other programs out", "", "");
    say("link.footSwitch", "Foot switch", "", "On which line of the port");
    themselves("link.footSwitch", "none");
    choice("link.footSwitch", "cts", "on CTS");
    choice("link.footSwitch", "dsr", "on DSR");
  }

  private static void capture() {
    say("capture", "When a depth is taken", "", "");
    say("capture.mode", "A depth is taken", "", "");
    choice("capture.mode", "settled", "when the bridge stands still");
    choice("capture.mode", "extremum", "at the extreme while the bridge is rocked");
    choice("capture.mode", "trigger", "on request: page, foot switch or data button");
    choice("capture.mode", "passing", "along a section that runs through");
    say(
        "capture.extreme",
        "Extreme while rocked",
        "",
        "Lowest where the bridge is turned on a tube");
    themselves("capture.extreme", "highest", "lowest");
    say("capture.everyFrame", "Each value is a reading", "", "For a data button");
    say("capture.restSeconds", "At rest for", "s", "Left empty: 0.4 s");
    say("capture.bandMm", "At rest within", "mm", "Left empty: 4 steps");
    say("capture.leastSamples", "At rest for at least", "values", "Left empty: 5, of slow ones 3");
    say("capture.contactMm", "On a piece from", "mm", "Above free air. Left empty: 20 steps");
    say("capture.freeAirMm", "Shown in free air", "mm", "Left empty: learned");
    say("capture.timeoutSeconds", "Time to come to rest", "s", "Left empty: 15 s");
    say("capture.stuckSeconds", "Report a value that stays for", "s", "Left empty: 120 s");
    say("capture.leastIntervalSeconds", "Between two requests", "s", "Left empty: 0.5 s");
  }

  private static void feed() {
    say("feed", "Length of a section that runs through", "", "");
    say("feed.length", "Length comes from", "", "");
    choice("feed.length", "channel", "a second value of the frame, as of a measuring wheel");
    choice("feed.length", "speed", "a stated constant feed");
    choice("feed.length", "none", "nowhere");
    say("feed.channel", "Channel that counts the length", "", "");
    say("feed.mmPerCount", "One count is", "mm", "");
    say("feed.counterBits", "Counter starts over after", "bits", "0: never; 16, 32");
    say("feed.reversed", "Counter counts down", "", "");
    say("feed.wheelFace", "Face the wheel runs on", "", "Left empty: the measured one");
    themselves("feed.wheelFace", "outer", "inner", "centreline");
    say("feed.mmPerSecond", "Constant feed", "mm/s", "");
    say("feed.mostMmPerSecond", "Greatest feed there is", "mm/s", "");
    say("feed.bothWays", "Pieces come from either end", "", "");
    say("feed.pieceMm", "Length of a piece", "mm", "");
    say("feed.leadInMm", "Straight end at the front", "mm", "");
    say("feed.leadOutMm", "Straight end at the back", "mm", "");
    say("feed.riseMm", "Length of the rise of the bend", "mm", "");
    say("feed.stretchMm", "Endless stock: a reading each", "mm", "");
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
