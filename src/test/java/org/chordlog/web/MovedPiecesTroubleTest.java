package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.station.Happening;
import org.chordlog.station.Place;
import org.chordlog.station.StationStatus;
import org.junit.jupiter.api.Test;

/** Pieces that are moved while something is in the way, or that are not as the usual ones. */
final class MovedPiecesTroubleTest extends MovedPiecesRig {
  private int moved(Job from, int firstPiece, Job to) throws Exception {
    HttpResponse<String> answer = move(from, firstPiece, to.id());
    assertEquals(200, answer.statusCode(), answer.body());
    return Served.tree(answer).get("readings").asInt();
  }

  private String place() {
    StationStatus.PlaceNow now = served.stations.status("A").place();
    return now.piece() + " " + now.position();
  }

  /** Else the same places would be measured again, and count twice. */
  @Test
  void whereTheStoreRefusesAMoveTheStationGoesOnWhereItWas() throws Exception {
    served.zeroAndFree();
    touch(1);
    touch(2);
    database("CREATE TRIGGER no BEFORE INSERT ON exclusion BEGIN SELECT RAISE(ABORT, 'no'); END");
    assertEquals(400, move(hoops, 1, rings.id()).statusCode());
    Await.until(() -> place().equals("1 end"), this::place);
    database("DROP TRIGGER no");
    touch(3);
    assertEquals(
        List.of("start", "middle", "end"), of(hoops).stream().map(Reading::position).toList());
    assertEquals(0, of(rings).size());
    assertEquals(3, moved(hoops, 1, rings));
    assertEquals(List.of(), audit());
  }

  private void database(String sql) throws Exception {
    try (Connection connection = DriverManager.getConnection(url());
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private String url() throws Exception {
    try (Stream<Path> files = Files.list(directory.resolve("one"))) {
      return "jdbc:sqlite:" + sqlite(files);
    }
  }

  private static Path sqlite(Stream<Path> files) {
    return files
        .filter(each -> each.toString().matches(".*\\.(db|sqlite)"))
        .findFirst()
        .orElseThrow();
  }

  /** A disk that is held for longer than whoever asks waits for it. */
  @Test
  void aMoveThatIsStoredLateIsDoneInFull() throws Exception {
    hoops(2);
    JsonNode unused = served.json("/api/jobs/" + hoops.id() + "/statistics");
    try (Connection other = DriverManager.getConnection(url());
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      HttpResponse<String> answer = move(hoops, 1, rings.id());
      assertEquals(503, answer.statusCode(), answer.body());
      assertTrue(answer.body().contains("look whether it is done"), answer.body());
      statement.execute("ROLLBACK");
    }
    Await.until(() -> of(rings).size() == 6);
    Await.until(() -> goesOnWith(hoops).equals("1 start"), this::place);
    assertEquals("3 start", goesOnWith(rings));
    assertEquals(List.of(), audit());
  }

  private String goesOnWith(Job job) {
    served.stations.at("A").selectJob(rings.id());
    served.stations.at("A").selectJob(job.id());
    return place();
  }

  /** Its other positions are measured in the job that it went to. */
  @Test
  void aPieceThatIsHalfMeasuredGoesOnInTheOtherJob() throws Exception {
    served.zeroAndFree();
    touch(1);
    assertEquals(1, moved(hoops, 1, rings));
    assertEquals("1 start", place());
    assertEquals("1 middle", goesOnWith(rings));
    touch(3);
    assertEquals(List.of("start", "middle"), of(rings).stream().map(Reading::position).toList());
    assertEquals(List.of(), audit());
  }

  /** Two pages at once: what one has moved, the other does not move again. */
  @Test
  void ofTwoMovesAtOnceOneIsRefused() throws Exception {
    hoops(30);
    String body = "{\"firstPiece\": 2, \"lastReadingId\": 90, \"toJobId\": %d}";
    List<Integer> codes =
        Stream.generate(() -> body.formatted(rings.id()))
            .limit(6)
            .parallel()
            .map(this::status)
            .sorted()
            .toList();
    assertEquals(200, codes.get(0));
    assertTrue(codes.subList(1, 6).stream().allMatch(code -> code >= 400 && code < 500));
    assertEquals(87, of(rings).size());
    assertEquals(List.of(), audit());
  }

  private int status(String body) {
    try {
      return served.post("/api/jobs/" + hoops.id() + "/moved-pieces", body).statusCode();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** A sealed file from before tells the readings as they were, and they are so still. */
  @Test
  void whatWasExportedBeforeAMoveIsStillThatOfTheRecord() throws Exception {
    hoops(3);
    String csv = directory.resolve("before.csv").toString();
    String data = directory.resolve("one").toString();
    assertEquals(0, Ran.command("export", "--seal", "--data", data, "--output", csv).code());
    moved(hoops, 2, rings);
    Ran verified = Ran.command("verify", csv, "--data", data);
    assertEquals(0, verified.code(), verified::toString);
    moved(rings, 1, hoops);
    assertEquals(0, Ran.command("verify", csv, "--data", data).code());
  }

  @Test
  void theLastReadingLeftIsUndoneHoweverManyWereMoved() throws Exception {
    hoops(40);
    assertEquals(117, moved(hoops, 2, rings));
    assertEquals(3, served.stations.at("A").undoLast(3, "bridge not seated", "Ann").readingId());
  }

  /** A job of a hundred readings a piece. */
  @Test
  void allReadingsOfAPieceAreOutOnceItIsRolledAgain() {
    for (int i = 0; i < 40; i++) {
      bent.piece(hoops, 1);
    }
    Place unused = served.stations.at("A").rolledAgain(1, "Ann");
    assertEquals(120, served.store.readings().exclusionsOfJob(hoops.id()).size());
  }

  @Test
  void aCorrectionToldInTheRightJobSinceThenComesAfterThePiecesThere() throws Exception {
    hoops(3);
    Happening correction =
        new Happening(JobEvent.Kind.CORRECTION, 10.0, 10.2, "", "after 3", null, null);
    var unused = served.stations.at("A").record(rings, correction, "Ann");
    moved(hoops, 2, rings);
    JobEvent there =
        served.store.jobs().eventsOfJob(rings.id()).stream()
            .filter(JobEvent::movesRollers)
            .reduce((first, last) -> last)
            .orElseThrow();
    assertEquals(of(rings).get(5).id(), there.afterReadingId());
    assertEquals(10.2, there.settingAfter());
    assertEquals(1, served.store.jobs().takenBack(rings.id()).size());
  }

  /** It could never be included again. */
  @Test
  void nobodyTypesThatAReadingWasMoved() throws Exception {
    hoops(1);
    HttpResponse<String> answer =
        served.post(
            "/api/readings/1/exclusion",
            "{\"excluded\": true, \"reason\": \"Belongs to job 7: there as piece 2\"}");
    assertEquals(400, answer.statusCode(), answer.body());
    assertTrue(answer.body().contains("says that it was moved"), answer.body());
  }

  /** The next piece of the old job is another one: it begins with its first pass and position. */
  @Test
  void theOldJobGoesOnWithAFreshPiece() throws Exception {
    hoops(2);
    Place again = served.stations.at("A").rolledAgain(2, "Ann");
    bent.piece(hoops, 2, again.pass());
    for (long id = 4; id <= 7; id++) {
      var unused = served.stations.at("A").exclude(id, true, "bridge not seated", "Ann");
    }
    moved(hoops, 2, rings);
    assertEquals("2 start", place());
    assertEquals(1, served.stations.status("A").place().pass());
  }

  @Test
  void whatIsOfferedIsWhatGoes() throws Exception {
    hoops(3);
    var unused = served.stations.at("A").exclude(8, true, "bridge not seated", "Ann");
    Place again = served.stations.at("A").rolledAgain(3, "Ann");
    bent.piece(hoops, 3, again.pass());
    JsonNode offer = served.json("/api/jobs/" + hoops.id() + "/moved-pieces");
    assertEquals(12, offer.get("lastReadingId").asInt());
    assertEquals(
        "[{\"firstPiece\":3,\"lastPiece\":3,\"readings\":5},"
            + "{\"firstPiece\":2,\"lastPiece\":3,\"readings\":8},"
            + "{\"firstPiece\":1,\"lastPiece\":3,\"readings\":11}]",
        offer.get("choices").toString());
    assertEquals(8, moved(hoops, 2, rings));
    assertEquals(
        "[{\"firstPiece\":1,\"lastPiece\":1,\"readings\":3}]",
        served.json("/api/jobs/" + hoops.id() + "/moved-pieces").get("choices").toString());
  }

  /** Of a thousand readings no piece is offered in part. */
  @Test
  void aPieceThatIsTooLargeIsNotOfferedInPart() throws Exception {
    for (int i = 1; i <= 440; i++) {
      bent.piece(hoops, 1 + i / 100);
    }
    assertEquals(
        "[{\"firstPiece\":5,\"lastPiece\":5,\"readings\":123},"
            + "{\"firstPiece\":4,\"lastPiece\":5,\"readings\":423},"
            + "{\"firstPiece\":3,\"lastPiece\":5,\"readings\":723}]",
        served.json("/api/jobs/" + hoops.id() + "/moved-pieces").get("choices").toString());
  }

  /** By the number piece 9 goes with piece 3, by the order it can't. */
  @Test
  void aPieceThatWasNumberedWrongIsNamedWhereItIsInTheWay() throws Exception {
    bent.piece(hoops, 9);
    bent.piece(hoops, 2);
    bent.piece(hoops, 3);
    HttpResponse<String> answer = move(hoops, 3, rings.id());
    assertEquals(400, answer.statusCode());
    assertTrue(
        answer
            .body()
            .contains("piece 9 would go too, but was measured before piece 2, which stays"),
        answer.body());
  }
}
