package org.chordlog.web;

import java.util.List;
import java.util.Map;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** The settings of a station: seen, changed, removed. */
final class StationSettingsRoutes {
  private static final String ONE = "/api/stations/{station}";
  private final Stations stations;
  private final StationKeeper keeper;
  private final OtherComputers others;

  StationSettingsRoutes(Stations stations, StationKeeper keeper, OtherComputers others) {
    this.stations = stations;
    this.keeper = keeper;
    this.others = others;
  }

  List<Route> routes() {
    return List.of(
        Route.get(ONE + "/settings", "Settings of a station, with the keys of the station file")
            .answers(SettingsView.class, call -> SettingsView.of(named(call))),
        Route.put(
                Right.CONFIGURE,
                ONE + "/settings",
                "Changes a station, also in the station file; it starts anew. With its version, in"
                    + " the body or as If-Match: 412 and the present state when it was changed"
                    + " since")
            .body(SettingsForm.class)
            .answers(StationView.class, this::change),
        Route.delete(
                Right.CONFIGURE,
                ONE,
                "Removes a station, also from the station file; its records stay")
            .does(this::remove));
  }

  /** The station as the file has it; {@code version} is another wherever anything is. */
  record SettingsView(Map<String, Object> station, String version) {
    static SettingsView of(StationSettings settings) {
      Map<String, Object> fields = StationFile.fields(settings);
      return new SettingsView(fields, JobVersion.digest(fields));
    }
  }

  /** A changed {@link SettingsView}; whatever the version is of, where it is given. */
  record SettingsForm(Map<String, Object> station, @Nullable String version) {}

  /** The station, where it is as the caller knows it, by If-Match or by that version. */
  private StationSettings meant(Call call, @Nullable String version) {
    StationSettings settings = named(call);
    SettingsView now = SettingsView.of(settings);
    if (!call.means(now.version()) || (version != null && !version.equals(now.version()))) {
      throw Refusal.changedMeanwhile(
          "Station "
              + settings.name()
              + " was changed meanwhile. Look at what it is now, then change it.",
          now);
    }
    return settings;
  }

  private StationSettings named(Call call) {
    String name = call.name("station");
    return stations.settings().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow(() -> Refusal.notFound("station", name));
  }

  /** One change after the other, each of the state that it means. */
  private synchronized StationView change(Call call) {
    SettingsForm form = call.body(SettingsForm.class);
    StationSettings before = meant(call, form.version());
    StationSettings wanted = PortRoutes.settings(form.station());
    if (!wanted.name().equals(before.name())) {
      throw new BadInput(
          "name", wanted.name(), "can't be changed: readings carry it", before.name());
    }
    others.ask(wanted, call.by());
    stations.replace(wanted, keeper);
    return StationView.of(stations.status(wanted.name()));
  }

  private synchronized void remove(Call call) {
    stations.remove(meant(call, null).name(), keeper);
  }
}
