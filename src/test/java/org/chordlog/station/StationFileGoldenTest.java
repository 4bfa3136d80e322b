package org.chordlog.station;

import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.introspect.BeanPropertyDefinition;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.Direction;
import org.chordlog.decode.Combination;
import org.chordlog.decode.FrameProfile;
import org.chordlog.harness.Golden;
import org.chordlog.measure.Indicator;
import org.chordlog.yaml.FieldBinder;
import org.junit.jupiter.api.Test;

/** Every key that a station file may have, with the words allowed: files in use hold them. */
final class StationFileGoldenTest {
  private static final DeserializationConfig READING =
      FieldBinder.yaml().build().getDeserializationConfig();

  private final List<String> rows = new ArrayList<>();

  @Test
  void keysAndWords() throws Exception {
    rows.addAll(StationFields.KEYS);
    for (Class<?> kind : LinkFields.class.getDeclaredClasses()) {
      keys("link " + kind.getSimpleName().toLowerCase(Locale.ROOT), kind);
    }
    keys("profile", FrameProfile.class);
    keys("indicator", Indicator.class);
    keys("bridge", StationFields.BridgeFields.class);
    keys("capture", CaptureOptions.class);
    keys("zero", StationFields.ZeroFields.class);
    keys("feed", FeedFields.class);
    key("combine", READING.constructType(Combination.class));
    key("direction", READING.constructType(Direction.class));
    Golden.check(
        "station-file.txt", rows.stream().distinct().sorted().collect(Collectors.joining("\n")));
  }

  /** As the mapper that reads station files sees the type. */
  private void keys(String path, Class<?> type) {
    JavaType read = READING.constructType(type);
    for (BeanPropertyDefinition each : READING.introspect(read).findProperties()) {
      if (each.couldDeserialize()) {
        key(path + "." + each.getName(), each.getPrimaryType());
      }
    }
  }

  private void key(String path, JavaType type) {
    JavaType of = type.isContainerType() ? type.getContentType() : type;
    rows.add(path + (of.isEnumType() ? words(of.getRawClass()) : ""));
    if (of.getRawClass().isRecord()) {
      keys(path, of.getRawClass());
    }
  }

  private static String words(Class<?> type) {
    return Arrays.stream(type.getEnumConstants())
        .map(each -> each.toString().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", ", ": ", ""));
  }
}
