package org.chordlog.web;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Addresses of what does not exist: that is said, and where to look instead. */
final class NotThereTest extends ShopTest {
  @Test
  void aPieceThatIsNotThereIsNamed() throws Exception {
    shop.go("/line.html?job=" + shop.jobId("Canopy hoops") + "&reading=99999");
    shop.sees("[role=alert]", "99999");
    shop.refusalsWereMeant();
  }

  @ParameterizedTest
  @CsvSource({
    "/job.html?job=999, jobs.html, All jobs",
    "/job.html?job=x, jobs.html, All jobs",
    "/line.html?job=999, jobs.html, All jobs",
    "/job-form.html?job=999, jobs.html, All jobs",
    "/job-changes.html?job=999, jobs.html, All jobs",
    "/machine.html?machine=none, machines.html, All machines",
    "/study.html?id=999, studies.html, All studies",
    "/station.html?station=none, /, All stations",
    "/station-settings.html?station=none, /, All stations"
  })
  void whatIsNotThereIsSaidAndLeadsToWhatIs(String page, String path, String words)
      throws Exception {
    shop.go(page);
    shop.sees("[role=alert]", "Not found.There is no ");
    shop.sees("[role=alert] a[href$='" + path + "']", words);
    shop.counts("[role=alert] button", 0);
    shop.counts("main [aria-busy]", 0);
    shop.refusalsWereMeant();
  }

  /** An address that was cut off on its way, as in a mail. */
  @ParameterizedTest
  @CsvSource({"/job-changes.html", "/machine.html", "/study.html", "/station-settings.html"})
  void whatAnAddressDoesNotNameIsNotShownAsAFault(String page) throws Exception {
    shop.go(page);
    shop.sees("[role=alert]", "Not found.Th");
    shop.counts("[role=alert] a", 1);
    shop.counts("main [aria-busy]", 0);
    shop.refusalsWereMeant();
  }
}
