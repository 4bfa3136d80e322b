package org.chordlog.web;

import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** The settings of a station: seen, changed, removed. */
final class StationSettingsRoutes {
  private static final String ONE = "/api/stations/{station}";
  private final Stations stations;
  private final StationKeeper keeper;

  StationSettingsRoutes(Stations stations, StationKeeper keeper) {
    this.stations = stations;
    this.keeper = keeper;
  }

  List<Route> routes() {
    return List.of(
        Route.get(ONE + "/settings", "Settings of a station, with the keys of the station file")
            .answers(PortRoutes.StationForm.class, call -> form(named(call))),
        Route.put(
                Right.CONFIGURE,
                ONE + "/settings",
                "Changes a station, also in the station file; it starts anew")
            .body(PortRoutes.StationForm.class)
            .answers(StationView.class, this::change),
        Route.delete(
                Right.CONFIGURE,
                ONE,
                "Removes a station, also from the station file; its records stay")
            .does(this::remove));
  }

  private static PortRoutes.StationForm form(StationSettings settings) {
    return new PortRoutes.StationForm(StationFile.fields(settings));
  }

  private StationSettings named(Call call) {
    String name = call.name("station");
    return stations.settings().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow(() -> Refusal.notFound("station", name));
  }

  private StationView change(Call call) {
    StationSettings before = named(call);
    StationSettings wanted = PortRoutes.settings(call);
    if (!wanted.name().equals(before.name())) {
      throw new BadInput(
          "name", wanted.name(), "can't be changed: readings carry it", before.name());
    }
    stations.replace(wanted, keeper);
    return StationView.of(stations.status(wanted.name()));
  }

  private void remove(Call call) {
    stations.remove(named(call).name(), keeper);
  }
}
