package org.chordlog.station;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.chordlog.link.ReplaySettings;
import org.chordlog.measure.BadInput;

/**
 * Adds, changes and removes stations of a station file, whose other lines stay as they are. Any
 * thread; one change at a time.
 */
public record StationFileKeeper(Path file) implements StationKeeper {
  @Override
  public void add(StationSettings station) {
    refuseForeignRecording(station);
    StationFileWriter.append(file, station);
  }

  @Override
  public void replace(StationSettings station) {
    edit(
        station.name(),
        list -> list.with(station),
        kept -> {
          if (kept.stream().noneMatch(each -> each.link().equals(station.link()))) {
            refuseForeignRecording(station);
          }
          StationFileWriter.refuseSamePort(
              station, kept.stream().filter(each -> !each.name().equals(station.name())).toList());
          return kept.stream()
              .map(each -> each.name().equals(station.name()) ? station : each)
              .toList();
        });
  }

  @Override
  public void remove(String name) {
    edit(
        name,
        StationLines::without,
        kept -> kept.stream().filter(each -> !each.name().equals(name)).toList());
  }

  /**
   * A page may name recordings beside the station file only; whoever may write that file may name
   * any.
   */
  private void refuseForeignRecording(StationSettings station) {
    if (station.link() instanceof ReplaySettings replay && !beside(replay.file())) {
      throw new BadInput(
          "link.file",
          replay.file(),
          "is not a file beside the station file",
          "a recording in " + file.toAbsolutePath().getParent());
    }
  }

  /** Links are followed first. */
  private boolean beside(Path recording) {
    try {
      Path folder = file.toRealPath().getParent();
      return folder != null && recording.toRealPath().startsWith(folder);
    } catch (IOException e) {
      return false;
    }
  }

  /** Replaces the file only when the changed text reads back as meant. */
  private void edit(
      String name,
      Function<StationLines, String> change,
      UnaryOperator<List<StationSettings>> meaning) {
    StationFileChange.of(
        file,
        before -> {
          List<StationSettings> meant =
              meaning.apply(new ArrayList<>(StationFile.parseFile(before, file)));
          String after = change.apply(StationLines.of(before, name, file));
          if (!StationFileWriter.readsAs(after, meant)) {
            throw StationLines.laidOutOtherwise(file);
          }
          return after;
        });
  }
}
