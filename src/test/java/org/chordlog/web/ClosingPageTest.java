package org.chordlog.web;

import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.store.Some;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The fitter of a ring asks the job's page how it closes. */
final class ClosingPageTest extends BrowserTest {
  /** Quarter of a ring of 1800 mm. */
  private static final double QUARTER = Math.PI / 2 * 1800;

  @TempDir Path directory;
  private Served served;
  private Visitor fitter;

  @BeforeEach
  void open() throws Exception {
    served = new Served(directory.resolve("data"));
    Job job = Some.job("rings", "three-roll bender");
    OrderDetails quarters = new OrderDetails(null, null, QUARTER, null);
    Job ring = served.store.jobs().add(job.withDetails(quarters), "tester");
    served.readings(ring, 12);
    fitter = new Visitor(served, browser, "Greta");
    fitter.go("/job.html?job=" + ring.id());
    fitter.sees("section[aria-label=Closing]", "chord from end to end");
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void theRadiusOfAMeasuredChordIsShown() throws Exception {
    fitter.fill("Measured", "2550");
    fitter.press("Show the radius");
    fitter.sees("form[aria-label='What a measured piece shows']", "wider than the target");
    fitter.fill("Measured", "nothing");
    fitter.press("Show the radius");
    fitter.sees("form[aria-label='What a measured piece shows'] .fault", "not a number");
  }

  @Test
  void theLastQuarterIsBentToCloseTheRing() throws Exception {
    String form = "form[aria-label='Ring of several pieces']";
    fitter.press("Close the ring");
    fitter.sees(form, "Nothing is bent yet: bend the other 4 pieces to 1800.0");
    tick(1);
    tick(2);
    tick(3);
    fitter.press("Close the ring");
    fitter.sees(form, "are left after pieces 1, 2, 3: bend the last piece to");
    tick(4);
    fitter.press("Close the ring");
    fitter.sees(form, "in this order. The last joint");
    fitter.findsNothingGrave();
    fitter.leavesNothingOnTheConsole();
  }

  private void tick(int piece) throws Exception {
    String box = "form[aria-label='Ring of several pieces'] [type=checkbox][value='" + piece + "']";
    fitter.click(box);
    Await.until(() -> fitter.find(box).isSelected());
  }
}
