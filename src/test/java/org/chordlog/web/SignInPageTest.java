package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;

/** People sign in, are refused in words, change at a shared screen; an administrator adds one. */
final class SignInPageTest extends BrowserTest {
  private static final String NOTICE = "For staff of the shop only.\n<b>All</b> is recorded.";
  @TempDir static Path folder;
  private static Served served;
  private static ShopPeople people;

  @BeforeAll
  static void serve() throws Exception {
    Reach reach = Reach.PLAIN.withAccounts().withNotice(NOTICE);
    served = new Served(folder, WebSettings.onLoopback(0).reached(reach));
    people = new ShopPeople(served);
    String unusedBoss = people.signedIn("Boss", Role.ADMINISTRATOR);
    String unusedAnn = people.signedIn("Ann", Role.OPERATOR);
    String unusedMarek = people.signedIn("Marek", Role.MAINTENANCE);
    var pinned = served.web.entrance().people().active("Ann").map(each -> each.id()).orElseThrow();
    var unusedBadge = served.web.entrance().people().badge(pinned, "0004711042", "a test");
    var unusedPin = served.web.entrance().people().pin(pinned, "271828", "a test");
    served.job();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @BeforeEach
  void nobodyIsSignedIn() {
    SharedBrowser.signOut();
  }

  private static void open(String path) {
    browser.get("http://localhost:" + served.web.port() + path);
  }

  private static WebElement there(By by) throws Exception {
    return Await.found(
        () -> shown(by),
        () -> browser.getCurrentUrl() + " " + browser.findElement(By.tagName("body")).getText());
  }

  private static Optional<WebElement> shown(By by) {
    try {
      return browser.findElements(by).stream().filter(WebElement::isDisplayed).findFirst();
    } catch (StaleElementReferenceException e) {
      return Optional.empty(); // another page came meanwhile
    }
  }

  private static void type(String name, String text) throws Exception {
    WebElement field = there(By.cssSelector("[name='" + name + "']"));
    field.clear();
    field.sendKeys(text);
  }

  private static void press(String words) throws Exception {
    there(By.xpath("//button[normalize-space()='" + words + "']")).click();
  }

  private static void signIn(String name, String password) throws Exception {
    type("name", name);
    type("password", password);
    press("Sign in");
  }

  /** In the bar, also of a page that is loaded anew meanwhile. */
  private static void isShown(String name) throws Exception {
    WebElement unused = there(By.xpath("//*[@id='signed-in'][normalize-space()='" + name + "']"));
  }

  /** For people to look at, where they ask for it. */
  static void picture(String name) throws Exception {
    if (!Boolean.getBoolean("chordlog.screens")) {
      return;
    }
    File taken = browser.getScreenshotAs(OutputType.FILE);
    Files.createDirectories(Path.of("target/screens"));
    Files.copy(
        taken.toPath(),
        Path.of("target/screens/" + name + ".png"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  @Test
  void theNoticeIsReadBeforeAnybodySignsIn() throws Exception {
    open("/jobs.html");
    assertEquals(NOTICE, there(By.id("notice")).getText());
    there(By.name("password"));
  }

  @Test
  void aPageLeadsToSigningInAndBackAndSaysWhoIs() throws Exception {
    open("/jobs.html?state=open");
    there(By.name("password"));
    picture("sign-in");
    signIn("Ann", "wrong");
    Await.until(() -> there(By.cssSelector(".fault.general")).getText().contains("do not belong"));
    signIn("Ann", ShopPeople.PASSWORD);
    isShown("Ann");
    assertTrue(browser.getCurrentUrl().endsWith("/jobs.html?state=open"));
    open("/job.html?job=1");
    press("Close job");
    there(By.cssSelector("dialog button[type='submit']")).click();
    Await.until(
        () ->
            there(By.cssSelector("dialog .fault.general"))
                .getText()
                .contains("takes the role quality"));
    picture("not-among-rights");
    press("Cancel");
    press("Sign out");
    there(By.name("password"));
  }

  @Test
  void theLogBookIsWrittenByThoseWhoLookAfterTheMachines() throws Exception {
    By write = By.xpath("//button[normalize-space()='Write an entry']");
    open("/sign-in.html");
    signIn("Ann", ShopPeople.PASSWORD);
    isShown("Ann");
    open("/machine.html?machine=three-roll%20bender");
    there(By.xpath("//*[@aria-label='Log book']//p[contains(., 'Nothing written yet')]"));
    assertTrue(shown(write).isEmpty());
    press("Sign out");
    signIn("Marek", ShopPeople.PASSWORD);
    isShown("Marek");
    open("/machine.html?machine=three-roll%20bender");
    there(write);
  }

  /** By axe, in light and dark: for signing in, by a code, and for looking after accounts. */
  @Test
  void pagesOfAccountsHaveNoGraveFinding() throws Exception {
    Visitor visitor = new Visitor(URI.create("http://localhost:" + served.web.port()), browser, "");
    open("/sign-in.html?to=/accounts.html");
    there(By.name("password"));
    visitor.findsNothingGrave();
    press("I have a code");
    there(By.name("again"));
    visitor.findsNothingGrave();
    press("I have a password");
    signIn("Boss", ShopPeople.PASSWORD);
    there(By.xpath("//table//strong[normalize-space()='Ann']"));
    visitor.findsNothingGrave();
    press("Add a person");
    there(By.cssSelector("[data-box='QUALITY']"));
    visitor.findsNothingGrave();
    press("Cancel");
    press("Boss");
    there(By.name("now"));
    visitor.findsNothingGrave();
  }

  /** In one question, since one dialog follows the other. */
  private boolean dialogSays(String words) {
    return Boolean.TRUE.equals(
        browser.executeScript(
            "return [...document.querySelectorAll('dialog')].some(e =>"
                + " e.textContent.includes(arguments[0]))",
            words));
  }

  /** On a tablet held upright, where a note would cover the button for signing out. */
  @Test
  void aPersonChangesTheOwnPassword() throws Exception {
    browser.manage().window().setSize(new Dimension(768, 1_024));
    String unusedDora = people.signedIn("Dora", Role.VIEWER);
    open("/");
    signIn("Dora", ShopPeople.PASSWORD);
    isShown("Dora");
    press("Dora");
    type("now", "not this one");
    type("next", "a wall of tubes");
    type("again", "a wall of tubes");
    press("Change password");
    Await.until(() -> dialogSays("Is wrong"));
    picture("own-password");
    type("now", ShopPeople.PASSWORD);
    type("next", "a wall of tubes");
    type("again", "a wall of tubes");
    press("Change password");
    Await.until(() -> dialogSays("password is changed"));
    picture("password-changed");
    press("OK");
    Await.until(() -> browser.findElements(By.tagName("dialog")).isEmpty());
    picture("signed-in-768");
    there(By.id("sign-out")).click();
    there(By.name("password"));
    picture("signed-out-768");
    signIn("Dora", "a wall of tubes");
    isShown("Dora");
    browser.manage().window().setSize(new Dimension(1_280, 1_000));
  }

  @Test
  void anAdministratorAddsAPersonWhoChoosesAPassword() throws Exception {
    open("/accounts.html");
    signIn("Boss", ShopPeople.PASSWORD);
    press("Add a person");
    type("name", "Cleo");
    there(By.cssSelector("[data-box='QUALITY']")).click();
    press("Add");
    String code = there(By.className("secret-once")).getText();
    Await.until(() -> code.equals(browser.executeScript("return String(getSelection())")));
    picture("code");
    browser.switchTo().activeElement().sendKeys(Keys.ENTER);
    assertEquals(code, there(By.className("secret-once")).getText(), "shown until Done");
    press("Copy");
    there(By.xpath("//button[.='Copied' or .='Not copied: select it']"));
    press("Done");
    Await.until(() -> there(By.id("accounts")).getText().contains("Cleo"));
    picture("accounts");
    press("Sign out");
    press("I have a code");
    type("name", "Cleo");
    type("code", code.toLowerCase(Locale.ROOT));
    type("password", "a long bent tube");
    type("again", "a long bent tube");
    press("Choose this password");
    isShown("Cleo");
  }

  @Test
  void aSharedScreenChangesPersonByBadgeAndByPin() throws Exception {
    open("/accounts.html");
    signIn("Boss", ShopPeople.PASSWORD);
    press("Share this screen");
    type("name", "Tablet 1");
    press("Share it");
    isShown("Nobody");
    press("Change person");
    there(By.name("badge"));
    long start = System.nanoTime();
    there(By.name("badge")).sendKeys("0004711042" + Keys.ENTER);
    isShown("Ann");
    System.out.printf("badge to name on the page: %.2f s%n", (System.nanoTime() - start) / 1e9);
    picture("shared");
    press("Leave");
    isShown("Nobody");
    press("Change person");
    picture("who");
    there(By.cssSelector("select[name='name'] option[value='Ann']")).click();
    start = System.nanoTime();
    type("pin", "271828" + Keys.ENTER);
    isShown("Ann");
    System.out.printf("PIN to name on the page: %.2f s%n", (System.nanoTime() - start) / 1e9);
  }

  @Test
  void anAdministratorEndsTheSharingOfAScreen() throws Exception {
    open("/accounts.html");
    signIn("Boss", ShopPeople.PASSWORD);
    press("Share this screen");
    type("name", "Desk");
    press("Share it");
    isShown("Nobody");
    SharedBrowser.signOut();
    open("/accounts.html");
    signIn("Boss", ShopPeople.PASSWORD);
    By row = By.xpath("//*[@id='screens']//tr[contains(., 'Desk')]");
    there(row).findElement(By.tagName("button")).click();
    picture("end-sharing");
    there(By.cssSelector("dialog button[type='submit']")).click();
    Await.until(() -> browser.findElements(row).isEmpty());
    assertFalse(served.web.entrance().screens().all().toString().contains("Desk"));
  }
}
