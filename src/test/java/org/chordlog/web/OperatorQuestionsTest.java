package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.Await;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** What the station asks the operator about a depth that may be none of a piece. */
final class OperatorQuestionsTest extends OperatorTest {
  /** R about 630 where 1800 is asked for: not recorded until somebody says so. */
  @Test
  void aDepthFarFromTheTargetCountsOnceTheOperatorSaysYes() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(7.0);
    operator.sees("#question", "is this a piece of the job?");
    operator.sees(".next", "Answer the question");
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".now", "in free air");
    assertEquals(0, taken());
    operator.press("Yes");
    operator.sees(".word", "Too tight");
    operator.counts("#question[hidden]", 1);
    assertEquals(1, served.store.readings().countOfJob(job.id()));
    operator.leavesNothingOnTheConsole();
  }

  /** No is said to the service: no screen asks any more, until the next such depth. */
  @Test
  void aDepthFarFromTheTargetIsForgottenOnceTheOperatorSaysNo() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(7.0);
    operator.sees("#question", "is this a piece of the job?");
    operator.press("No piece");
    Await.until(() -> served.stations.status("A").question() == null);
    operator.counts("#question[hidden]", 1);
    served.indicator.show(TerminalIndicator.FREE_MM);
    operator.sees(".now", "in free air");
    served.indicator.show(7.0);
    operator.sees("#question", "is this a piece of the job?");
    assertEquals(0, served.store.readings().countOfJob(job.id()));
    operator.leavesNothingOnTheConsole();
  }

  /** The piece counts in the job that was named, and the station goes on with that one. */
  @Test
  void aDepthFarFromTheTargetCountsInTheJobThatTheOperatorNames() throws Exception {
    Job rings = served.store.jobs().add(tighter("rings"), "tester");
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(7.0);
    operator.sees("#question", "is this a piece of the job?");
    operator.press("A piece of another job…");
    operator.sees("dialog", "Which job is it a piece of?");
    String asked = operator.text("dialog");
    assertFalse(asked.contains(job.name()));
    assertTrue(asked.contains("target 680, limits 600 to 760"), asked);
    assertTrue(asked.contains("not begun"), asked);
    operator.press("rings");
    operator.sees("#job", "rings");
    operator.counts("#question[hidden]", 1);
    assertEquals(1, served.store.readings().countOfJob(rings.id()));
    assertEquals(0, served.store.readings().countOfJob(job.id()));
    operator.leavesNothingOnTheConsole();
  }

  /** R about 630 on the centreline is 7 mm of depth. */
  private static Job tighter(String name) {
    Job job = Some.job(name, "three-roll bender");
    Job.Inspection asked = job.inspection();
    return Job.opened(
        job.order(),
        job.workplace(),
        new Job.Inspection(
            asked.section(),
            asked.measuredFace(),
            new Specification(Face.CENTRELINE, 680, 600.0, 760.0),
            asked.plan()),
        Some.T0);
  }

  @Test
  void aLaterRestOfOneContactCountsAtTheNextPlaceOrInPlaceOfTheFirst() throws Exception {
    operator.go(STATION);
    operator.sees("#freshness", "Live");
    served.indicator.show(2.9);
    Await.until(() -> taken() == 1);
    served.indicator.show(2.6);
    operator.sees("#question", "the same place, put right, or the next one");
    operator.press("The next one: piece 1, middle");
    operator.sees(".of-piece", "Next: piece 1, end");
    operator.counts("#question[hidden]", 1);
    served.indicator.show(2.733);
    operator.sees("#question", "+0.133");
    operator.press("The same place: take this instead");
    Await.until(() -> served.store.readings().countOfJob(job.id()) == 3);
    var newest = served.store.readings().latestOfJob(job.id(), Long.MAX_VALUE, 2);
    assertEquals("middle", newest.get(0).position());
    var excluded = served.store.readings().exclusionsOfJob(job.id());
    assertEquals(1, excluded.size());
    assertEquals(newest.get(1).id(), excluded.get(0).readingId());
    operator.leavesNothingOnTheConsole();
  }
}
