package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** Pieces that can't be moved stay where they are, and why is said in plain words. */
final class MovedPiecesRefusedTest extends MovedPiecesRig {
  /** Else it would count twice. */
  @Test
  void aMovedReadingIsNotPutBackByHand() throws Exception {
    hoops(1);
    moves(hoops, 1, rings);
    HttpResponse<String> answer =
        served.post("/api/readings/1/exclusion", "{\"excluded\": false, \"reason\": \"mine\"}");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("move its piece back from there"), answer.body());
  }

  private static Job.Inspection tube(Face measured, List<String> positions) {
    return new Job.Inspection(
        new Section.RoundTube(60.3, 3.2),
        measured,
        new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
        new Plan(positions, new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)));
  }

  @Test
  void whatCanNotBeMovedIsRefusedInPlainWords() throws Exception {
    hoops(3);
    refuses(hoops, 2, hoops.id(), "is the job that they are in");
    refuses(hoops, 2, 99, "is not known");
    refuses(hoops, 9, rings.id(), "has no reading that counts");
    Job one = added("one place", tube(Face.OUTER, List.of("middle")));
    refuses(hoops, 2, one.id(), "is not measured at start, but at middle");
    Job inner = added("inner", tube(Face.INNER, Bent.POSITIONS));
    refuses(hoops, 2, inner.id(), "can't take piece 2, start");
    Job elsewhere = served.store.jobs().add(Some.job("far", "other bender"), "tester");
    refuses(hoops, 2, elsewhere.id(), "another open job of three-roll bender and station A");
    served.store.jobs().update(rings.withState(Job.State.CLOSED), "me", "done");
    refuses(hoops, 2, rings.id(), "is closed; reopen it first");
    HttpResponse<String> empty =
        served.post("/api/jobs/" + hoops.id() + "/moved-pieces", "{\"firstPiece\": 1}");
    assertEquals(400, empty.statusCode());
    assertTrue(empty.body().contains("lastReadingId") && empty.body().contains("toJobId"));
    assertEquals(List.of(), audit());
  }

  @Test
  void whatWasMeasuredSinceForbidsIt() throws Exception {
    hoops(2);
    HttpResponse<String> old =
        served.post(
            "/api/jobs/" + hoops.id() + "/moved-pieces",
            "{\"firstPiece\": 2, \"lastReadingId\": 5, \"toJobId\": %d}".formatted(rings.id()));
    assertEquals(409, old.statusCode());
    assertTrue(old.body().contains("The last reading is now piece 2, end."), old.body());
    bent.piece(rings, 1);
    refuses(hoops, 2, rings.id(), " was measured since, after piece 2");
    Job third = added("third", rings.inspection());
    refuses(hoops, 2, third.id(), "was followed by piece 1 of job rings on the machine");
  }

  @Test
  void noMoreThanAThousandReadingsGoAtOnce() throws Exception {
    served.readings(hoops, 1_002);
    refuses(hoops, 1, rings.id(), "have too many readings");
    moves(hoops, 2, rings);
    assertEquals(999, of(rings).size());
    assertEquals(List.of(), audit());
  }
}
