package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.DecoderKind;
import org.chordlog.decode.FormatsTable;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class StationFileWriterTest {
  /** Each that is added has the file read twice. */
  private static final int IN_A_FILE = 6;

  @TempDir private Path directory;

  private static StationSettings station(String name, LinkSettings link, FrameProfile profile) {
    Integer only = profile.onlyChannel();
    return StationSettings.of(name, link, profile, StationRig.INDICATOR)
        .machine("bender")
        .channel(only == null ? Integer.valueOf(1) : only)
        .bridge(StationRig.BRIDGE)
        .capture(StationRig.settled())
        .build();
  }

  private static StationSettings station(String name, LinkSettings link) {
    return station(name, link, BuiltInProfile.SIGNED_MM_LINES.profile());
  }

  @Test
  void everyLinkAndEveryBuiltInProfileReadsBackAsWritten() {
    List<StationSettings> all =
        Stream.concat(
                Stream.of(
                    station("serial", SerialSettings.of("/dev/serial/by-id/x")),
                    station("tcp", new TcpSettings("10.1.2.3", 4001)),
                    station("replay", new ReplaySettings(Path.of("/tmp/r.txt"), 0))),
                Arrays.stream(BuiltInProfile.values())
                    .map(
                        p ->
                            station(
                                p.plainName(),
                                SerialSettings.of("/dev/" + p.plainName()),
                                changed(p))))
            .toList();
    for (int i = 0; i < all.size(); i += IN_A_FILE) {
      Path file = directory.resolve("stations-" + i + ".yaml");
      List<StationSettings> some = all.subList(i, Math.min(all.size(), i + IN_A_FILE));
      some.forEach(each -> StationFileWriter.append(file, each));
      assertEquals(some, StationFile.read(file));
    }
  }

  /** Also by YAML that JSON is: what a page sends is what was proposed. */
  @Test
  void everyProfileThatIsProposedReadsBackAsWritten() {
    for (FrameProfile profile : FormatsTable.proposedProfiles()) {
      StationSettings station = station("a", SerialSettings.of("/dev/a"), profile);
      String written = "stations:\n" + StationNode.item(station, "  ");
      assertEquals(List.of(station), StationFile.parse(written, "test"), written);
    }
  }

  /** Also where its fields would suggest another one. */
  @Test
  void aProfileThatIsChangedKeepsItsKind() {
    FrameProfile stated = StationFile.profile("{kind: frames, unit: mm, binary: {type: int16}}");
    assertEquals(DecoderKind.FRAMES, stated.onButtonOnly().kind());
  }

  /** No longer a built-in one, so that it is written out in full. */
  private static FrameProfile changed(BuiltInProfile builtIn) {
    return builtIn.profile().toBuilder().passOver(List.of("# .*")).build();
  }

  @Test
  void commentsAndLayoutBeforeItStay() throws Exception {
    Path file = directory.resolve("stations.yaml");
    StationFileWriter.append(file, station("first", SerialSettings.of("/dev/x")));
    String before = "# our benders\n" + Files.readString(file) + "    # the last remark";
    Files.writeString(file, before);
    StationFileWriter.append(file, station("second", SerialSettings.of("/dev/y")));
    assertTrue(Files.readString(file).startsWith(before + "\n"), Files.readString(file));
    assertEquals(2, StationFile.read(file).size());
  }

  @Test
  void aFileThatCanNotBeAddedToIsLeftAlone() throws Exception {
    Path file = directory.resolve("stations.yaml");
    StationFileWriter.append(file, station("first", SerialSettings.of("/dev/x")));
    BadInput taken =
        assertThrows(
            BadInput.class,
            () -> StationFileWriter.append(file, station("first", SerialSettings.of("/dev/y"))));
    assertTrue(taken.toString().contains("config"), taken.toString());
    assertEquals(1, StationFile.read(file).size());
    String[] seen = directory.toFile().list((folder, name) -> !name.startsWith("."));
    assertArrayEquals(new String[] {"stations.yaml"}, seen, "only the lock stays beside it");
  }
}
