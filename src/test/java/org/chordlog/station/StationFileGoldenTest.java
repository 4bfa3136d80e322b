package org.chordlog.station;

import java.util.Locale;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.Direction;
import org.chordlog.decode.Combination;
import org.chordlog.decode.FrameProfile;
import org.chordlog.harness.FileKeys;
import org.chordlog.harness.Golden;
import org.chordlog.measure.Indicator;
import org.junit.jupiter.api.Test;

/** Every key that a station file may have, with the words allowed: files in use hold them. */
final class StationFileGoldenTest {
  @Test
  void keysAndWords() throws Exception {
    FileKeys rows = new FileKeys();
    StationFields.KEYS.forEach(rows::key);
    for (Class<?> kind : LinkFields.class.getDeclaredClasses()) {
      rows.keys("link " + kind.getSimpleName().toLowerCase(Locale.ROOT), kind);
    }
    rows.keys("profile", FrameProfile.class);
    rows.keys("indicator", Indicator.class);
    rows.keys("bridge", StationFields.BridgeFields.class);
    rows.keys("capture", CaptureOptions.class);
    rows.keys("zero", StationFields.ZeroFields.class);
    rows.keys("feed", FeedFields.class);
    rows.key("combine", Combination.class);
    rows.key("direction", Direction.class);
    Golden.check("station-file.txt", rows.text());
  }
}
