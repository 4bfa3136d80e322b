package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.station.Place;
import org.chordlog.station.StationActions;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Which piece and position the next reading of a station belongs to, and the way back. */
final class PlaceRoutes {
  private static final String ONE = "/api/stations/{station}";
  private final Stations stations;

  PlaceRoutes(Stations stations) {
    this.stations = stations;
  }

  /** Why the last reading is taken out, and which one is meant. */
  record UndoForm(
      @Needed @Nullable String reason,
      @JsonPropertyDescription("needed; refused with 409 when another one is the last by now")
          @Nullable Long readingId) {}

  /** The piece that was rolled again. */
  record PieceForm(int piece) {}

  /** Whether a piece without a reading may be passed over. */
  record NextForm(@Nullable Boolean skip) {}

  /** Where the next reading belongs. */
  record PlaceForm(@Needed @Nullable Integer piece, @Needed @Nullable String position) {}

  /** Where the next reading belongs. */
  record PlaceView(int piece, String position, int pass) {
    static PlaceView of(Place place) {
      return new PlaceView(place.piece(), place.position(), place.pass());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.post(Right.MEASURE, ONE + "/undo", "Takes the last reading out of the statistics")
            .body(UndoForm.class)
            .answers(ExclusionView.class, this::undo),
        Route.post(
                Right.MEASURE,
                ONE + "/rolled-again",
                "A piece was rolled once more and is measured again")
            .body(PieceForm.class)
            .answers(
                PlaceView.class,
                call ->
                    PlaceView.of(
                        StationRoutes.at(stations, call)
                            .rolledAgain(call.body(PieceForm.class).piece(), call.by()))),
        Route.post(
                Right.MEASURE,
                ONE + "/next-piece",
                "Goes on with the next piece; 409 when this one has no reading, unless it may be"
                    + " passed over")
            .body(NextForm.class)
            .answers(PlaceView.class, this::nextPiece),
        Route.post(Right.MEASURE, ONE + "/place", "Goes to a piece and position")
            .body(PlaceForm.class)
            .answers(PlaceView.class, this::goTo));
  }

  private ExclusionView undo(Call call) {
    StationActions actions = StationRoutes.at(stations, call);
    UndoForm form = call.body(UndoForm.class);
    String reason = new Reason(form.reason()).needed();
    Long reading = form.readingId();
    if (reading == null) {
      throw new BadInput("readingId", "", "is missing", "the number of the last reading");
    }
    return ExclusionView.of(actions.undoLast(reading, reason, call.by()));
  }

  private PlaceView nextPiece(Call call) {
    StationActions actions = StationRoutes.at(stations, call);
    boolean skip = Boolean.TRUE.equals(call.body(NextForm.class).skip());
    return PlaceView.of(skip ? actions.nextPiece() : actions.nextPieceAfterReading());
  }

  private PlaceView goTo(Call call) {
    StationActions actions = StationRoutes.at(stations, call);
    PlaceForm form = call.body(PlaceForm.class);
    Faults faults = new Faults();
    faults.needed("piece", form.piece(), "1 or more");
    faults.needed("position", form.position(), "a position of the plan");
    faults.refuse();
    return PlaceView.of(
        actions.goTo(
            Objects.requireNonNull(form.piece()), Objects.requireNonNull(form.position())));
  }
}
