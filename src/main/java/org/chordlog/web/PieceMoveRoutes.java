package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Objects;
import org.chordlog.account.Right;
import org.chordlog.measure.Job;
import org.chordlog.station.PiecesMoved;
import org.chordlog.station.PiecesOnOffer;
import org.chordlog.station.PiecesToMove;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Pieces that were measured under the wrong job. */
final class PieceMoveRoutes {
  private final Store store;
  private final Stations stations;

  PieceMoveRoutes(Store store, Stations stations) {
    this.store = store;
    this.stations = stations;
  }

  /** Which pieces belong to which job. */
  record MoveForm(
      @JsonPropertyDescription("needed; this piece and all after it") @Needed
          @Nullable Integer firstPiece,
      @JsonPropertyDescription("needed; refused with 409 when another one is the last by now")
          @Needed
          @Nullable Long lastReadingId,
      @JsonPropertyDescription("needed; an open job of the same machine and station") @Needed
          @Nullable Long toJobId) {
    PiecesToMove of(long jobId) {
      Faults faults = new Faults();
      faults.needed("firstPiece", firstPiece, "1 or more");
      faults.needed("lastReadingId", lastReadingId, "the number of the job's last reading");
      faults.needed("toJobId", toJobId, "the number of an open job");
      faults.refuse();
      return new PiecesToMove(
          jobId,
          Objects.requireNonNull(firstPiece),
          Objects.requireNonNull(lastReadingId),
          Objects.requireNonNull(toJobId));
    }
  }

  /** What they are in the job that they were moved to. */
  record MovedView(long jobId, int firstPiece, int lastPiece, long pieces, int readings) {
    static MovedView of(PiecesMoved moved) {
      return new MovedView(
          moved.jobId(),
          moved.firstPiece(),
          moved.lastPiece(),
          moved.pieces(),
          moved.readings().size());
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(
                "/api/jobs/{job}/moved-pieces",
                "From which of its newest pieces on they may go to another job")
            .answers(PiecesOnOffer.class, this::offered),
        Route.post(
                Right.JOB,
                "/api/jobs/{job}/moved-pieces",
                "Moves the newest pieces of a job to the job that they belong to")
            .body(MoveForm.class)
            .answers(MovedView.class, this::move));
  }

  private PiecesOnOffer offered(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    return stations.at(job.station()).movable(job.id());
  }

  private MovedView move(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    PiecesToMove asked = call.body(MoveForm.class).of(job.id());
    return MovedView.of(stations.at(job.station()).move(asked, call.by()));
  }
}
