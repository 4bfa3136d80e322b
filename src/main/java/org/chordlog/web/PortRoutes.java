package org.chordlog.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.chordlog.account.Right;
import org.chordlog.link.PortFinder;
import org.chordlog.link.PortInfo;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Route;

/** Ports of this computer, and adding a station on one. */
final class PortRoutes {
  private static final String FIRST = "stations[0].";
  private final Stations stations;

  private final StationKeeper keeper;
  private final OtherComputers others;

  PortRoutes(Stations stations, StationKeeper keeper, OtherComputers others) {
    this.stations = stations;
    this.keeper = keeper;
    this.others = others;
  }

  /** A station as the station file has it; its keys are in src/docs/stations.md. */
  record StationForm(Map<String, Object> station) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/ports", "Serial ports of this computer")
            .answersList(PortInfo.class, call -> PortFinder.list()),
        Route.post(
                Right.CONFIGURE, "/api/stations", "Adds a station and keeps it in the station file")
            .body(StationForm.class)
            .creates(StationView.class, this::add));
  }

  private StationView add(Call call) {
    StationSettings settings = settings(call.body(StationForm.class).station());
    others.ask(settings, call.by());
    stations.add(settings, keeper);
    return StationView.of(stations.status(settings.name()));
  }

  /** The station that such a map describes. */
  static StationSettings settings(Map<String, Object> station) {
    ObjectNode file = Json.shared().createObjectNode();
    JsonNode fields = Json.shared().valueToTree(station);
    file.putArray("stations").add(fields);
    return parse(file.toString());
  }

  /** JSON is YAML (YAML 1.2, section 1.3), so the station file's own reader checks it. */
  private static StationSettings parse(String yaml) {
    try {
      return StationFile.parse(yaml, "station").get(0);
    } catch (BadInput e) {
      throw new BadInput(e.faults().stream().map(PortRoutes::ofStation).toList());
    }
  }

  private static Fault ofStation(Fault f) {
    return f.field().startsWith(FIRST) ? f.at(f.field().substring(FIRST.length())) : f;
  }
}
