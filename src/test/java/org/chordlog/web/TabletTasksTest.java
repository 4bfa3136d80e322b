package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What three people do at a tablet (768 x 1024), each signed in; people and shop are invented. */
final class TabletTasksTest extends BrowserTest {
  private static final String PIN = "271828";
  @TempDir static Path folder;
  private static Served served;
  private Visitor visitor;

  @BeforeAll
  static void serve() {
    Reach reach = Reach.PLAIN.withAccounts();
    WebSettings settings = WebSettings.onLoopback(0).reached(reach);
    served = new Served(ShopPages.filled(folder.resolve("data")), settings);
    ShopPeople people = new ShopPeople(served);
    var boss = people.signedIn("Boss", Role.ADMINISTRATOR);
    var quality = people.signedIn("Quinn", Role.QUALITY);
    var maintenance = people.signedIn("Max", Role.MAINTENANCE);
    var operator = people.signedIn("Ann", Role.OPERATOR);
    long ann = served.web.entrance().people().active("Ann").orElseThrow().id();
    var pinned = served.web.entrance().people().pin(ann, PIN, "a test");
    assertTrue(boss.length() + quality.length() + maintenance.length() + operator.length() > 0);
    assertEquals(ann, pinned.id());
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @BeforeEach
  void nobodyIsSignedIn() throws Exception {
    browser.get(served.uri("/sign-in.html").toString());
    browser.manage().deleteAllCookies();
    visitor = new Visitor(served, browser, "");
    visitor.looksAt(768, 1024);
  }

  private void signIn(String name) throws Exception {
    visitor.fill("Name", name);
    visitor.fill("Password", ShopPeople.PASSWORD + Keys.ENTER);
    visitor.sees("#signed-in", name);
  }

  private static void choose(String value) throws Exception {
    Await.until(() -> !browser.findElements(option(value)).isEmpty());
    browser.findElement(option(value)).click();
  }

  private static By option(String value) {
    return By.cssSelector("dialog select[name='name'] option[value='" + value + "']");
  }

  /** Ann takes over at a shared screen and measures a piece, which is recorded as hers. */
  @Test
  void anOperatorSaysWhoIsThereByPinAndMeasures() throws Exception {
    Job job = served.job();
    served.stations.at("A").refresh();
    visitor.go("/accounts.html");
    signIn("Boss");
    visitor.press("Share this screen");
    visitor.fill("Name of this screen", "Tablet 1");
    visitor.press("Share it");
    visitor.sees("#signed-in", "Nobody");
    visitor.go("/station.html?station=A");
    visitor.sees("#signed-in", "Nobody");
    SignInPageTest.picture("tablet-nobody");
    visitor.press("Change person");
    choose("Ann");
    SignInPageTest.picture("tablet-pin");
    visitor.fill("PIN, 6 digits", PIN + Keys.ENTER);
    visitor.sees("#signed-in", "Ann");
    served.indicator.show(0);
    visitor.press("Zero");
    SignInPageTest.picture("tablet-zero");
    visitor.pressUntil("Set zero", () -> visitor.text(".note").contains("Zero set"));
    served.indicator.show(TerminalIndicator.FREE_MM);
    Await.until(served::free);
    served.indicator.show(2.735);
    Await.until(() -> !served.store.readings().ofJob(job.id(), 0, 9).isEmpty());
    served.indicator.show(TerminalIndicator.FREE_MM);
    visitor.sees(".word", "Good");
    SignInPageTest.picture("tablet-measured");
    Reading reading = served.store.readings().ofJob(job.id(), 0, 9).get(0);
    assertEquals("Ann", reading.circumstances().measuredBy());
    visitor.press("Leave");
    visitor.sees("#signed-in", "Nobody");
    Await.until(() -> served.stations.status("A").place().person() == null);
  }

  /** 1280 x 800 at 200 %: the bar has a second row for who is signed in. */
  @Test
  void aZoomedPageOfWhoIsSignedInDoesNotScrollSideways() throws Exception {
    visitor.looksAt(640, 400);
    visitor.go("/accounts.html");
    signIn("Boss");
    visitor.press("Add a person");
    visitor.counts("dialog .tick", 6);
    Object sideways =
        browser.executeScript("return document.documentElement.scrollWidth > window.innerWidth");
    assertEquals(false, sideways);
  }

  /** Quinn leaves a reading out, with a reason, and it is recorded as hers. */
  @Test
  void aQualityEngineerExcludesAReadingWithItsReason() throws Exception {
    visitor.go("/jobs.html");
    signIn("Quinn");
    SignInPageTest.picture("tablet-jobs");
    visitor.press("Canopy hoops");
    visitor.sees("h1", "Canopy hoops");
    visitor.counts("section[aria-label='Control charts'] .picture svg", 1);
    SignInPageTest.picture("tablet-job");
    WebElement chart = visitor.find("section[aria-label='Control charts'] .picture");
    browser.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.HOME, Keys.ENTER);
    visitor.find(".side-item");
    SignInPageTest.picture("tablet-point");
    visitor.find(".side-item .row button:last-child").sendKeys(Keys.ENTER);
    visitor.press("Another reason…");
    visitor.find("dialog [name='reason']").sendKeys("bridge on the weld");
    SignInPageTest.picture("tablet-exclude");
    visitor.find("dialog [name='reason']").sendKeys(Keys.ENTER);
    visitor.sees(".side-item", "Excluded: bridge on the weld");
    String who = served.store.readings().exclusionsOfJob(jobId()).toString();
    assertTrue(who.contains("Quinn"), who);
  }

  private static long jobId() {
    return served.store.jobs().list(Long.MAX_VALUE, 100).stream()
        .filter(job -> job.name().equals("Canopy hoops"))
        .findFirst()
        .orElseThrow()
        .id();
  }

  /** Max sees which machine moved, looks at it, and answers what the page asks of it. */
  @Test
  void maintenanceLooksAtAMachineAndDescribesItsScale() throws Exception {
    visitor.go("/machines.html");
    signIn("Max");
    visitor.sees("#machines", "Machine jumped at piece");
    SignInPageTest.picture("tablet-machines");
    visitor.click("#machines a");
    visitor.sees("h1", "roller 2");
    visitor.counts(".picture svg", 3);
    SignInPageTest.picture("tablet-machine");
    visitor.press("Describe the scale");
    visitor.fill("Name", "dial of roller 2");
    visitor.fill("Unit", "0.01 mm");
    SignInPageTest.picture("tablet-scale");
    visitor.press("Save the scale");
    visitor.counts("dialog", 0);
    visitor.sees("main", "dial of roller 2, in 0.01 mm");
    SignInPageTest.picture("tablet-answered");
  }
}
