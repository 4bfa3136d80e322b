package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.chordlog.measure.Lengths;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The modules of the pages in the browser that runs them: by tables what they compute. */
final class ModulesTest extends BrowserTest {
  /** The expression sees what the module exports by its name. */
  static final String EVALUATED =
      "const [unit, module, done] = arguments; localStorage.setItem('unit', unit);"
          + "import(`/parts/${module}.js`).then(all => { with (all) { return %s; } })"
          + ".then(result => done(String(result)), fault => done(`failed: ${fault}`));";

  @TempDir static Path directory;
  private static Served served;
  private static Visitor visitor;

  @BeforeAll
  static void open() {
    served = new Served(directory.resolve("data"));
    visitor = new Visitor(served, browser, "tester");
    visitor.go("/health");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** Until the table is drawn anew the button is still there. */
  @Test
  void aCauseIsAskedForOnceHoweverOftenTheButtonIsPressed() {
    String pressedTwice =
        "(() => { let asked = 0; const wait = () => { asked++; return new Promise(() => {}); };"
            + "const spell = {words: 'high', since: '2026-11-27T10:00:00Z', answered: false};"
            + "const button = spellTable([spell], [], wait).querySelector('button');"
            + "button.click(); button.click(); return asked; })()";
    assertEquals(
        "1", browser.executeAsyncScript(EVALUATED.formatted(pressedTwice), "mm", "job-spells"));
  }

  /** A slow answer that was asked for first is not shown over a later one. */
  @Test
  void loadsOfAPageComeOneAfterTheOther() {
    String loads =
        "(async () => { const said = []; let asked = 0;"
            + "const load = oneByOne(async () => { const mine = ++asked; said.push('ask ' + mine);"
            + "await new Promise(done => setTimeout(done, mine === 1 ? 50 : 1));"
            + "said.push('show ' + mine); if (mine === 2) throw new Error('refused'); });"
            + "const first = load(); const second = load(); const third = load();"
            + "await first; await second.catch(() => said.push('fault')); await third.catch(() => {});"
            + "await load(); return said.join(', '); })()";
    assertEquals(
        "ask 1, show 1, ask 2, show 2, fault, ask 3, show 3",
        browser.executeAsyncScript(EVALUATED.formatted(loads), "mm", "loads"));
  }

  /** A change sent again while the first is under way: the answer to the first is waited for. */
  @ParameterizedTest
  @CsvSource({"2, kept after 3", "99, This is still being saved. after 20"})
  void whatIsStillBeingSavedIsAskedForAgain(int refused, String said) {
    String sent =
        "(async () => { let asked = 0; const real = window.fetch; window.fetch = async () =>"
            + "++asked > %d ? new Response('{\"said\": \"kept\"}') : new Response('{\"detail\":"
            + "\"This is still being saved.\"}', {status: 409, headers: {'Retry-After': '0.001'}});"
            + "const answer = await send('POST', 'api/x').catch(problem => ({said: problem.message}));"
            + "window.fetch = real; return `${answer.said} after ${asked}`; })()";
    assertEquals(
        said,
        browser.executeAsyncScript(EVALUATED.formatted(sent.formatted(refused)), "mm", "api"));
  }

  /** One inch is exactly 25.4 mm (BIPM, The International System of Units, 9th ed., table 8). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          length(1.2345, 3)              | 1.234   | 0.04860
          length(-0.5, 2)                | −0.50   | −0.0197
          length(null, 2)                | –       | –
          plainLength(25.4)              | 25.4    | 1
          plainLength(0.0254)            | 0.0254  | 0.001
          plainLength(-1788.16)          | −1788.16| −70.4
          plainLength(undefined)         | –       | –
          fixed(-0.25, 1)                | −0.3    | −0.3
          enteredMm('70,4')              | 70.4    | 1788.16
          enteredMm(' −2 ')              | -2      | -50.8
          enteredMm('')                  | null    | null
          enteredMm('two')               | NaN     | NaN
          entered('1,5')                 | 1.5     | 1.5
          entered('1,800')               | NaN     | NaN
          entered('0,125')               | 0.125   | 0.125
          entered('1,800.5')             | NaN     | NaN
          entered('1800.5e-3')           | 1.8005  | 1.8005
          entered('0x1f')                | NaN     | NaN
          withUnit('3')                  | 3 mm    | 3 in
          withUnit('–')                  | –       | –
          shownIn(25.4, 'mm').value      | 25.4    | 1
          shownIn(1, '1/km').value       | 1       | 0.0254
          shownIn(7, '').value           | 7       | 7
          """)
  void lengthsAreShownAndEnteredInTheViewersUnit(String expression, String mm, String inch) {
    assertEquals(mm, evaluated("mm", "units", expression));
    assertEquals(inch, evaluated("inch", "units", expression));
  }

  /** What the service says too: a line that ends with a number is read without its unit. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          even at the end: −0.11 %.     | even at the end: −0.11_%.
          by 4.3 mm (± 3.9), not before | by 4.3_mm (±_3.9), not before
          piece 4 in place, 70.9 in;    | piece 4_in place, 70.9_in;
          a word, mm, and no number     | a word, mm, and no number
          """)
  void aNumberIsNotPartedFromItsUnit(String words, String shown) {
    assertEquals(
        shown.replace('_', '\u00a0'), evaluated("mm", "dom", "kept('%s')".formatted(words)));
  }

  /** As many digits as two significant ones of the uncertainty need; a flat has none. */
  @ParameterizedTest
  @CsvSource(
      nullValues = "null",
      textBlock =
          """
          null, 5000, null, flat,
          1800, 1798.75, 1801.25, 1800.0, ± 1.3
          1800, 1780, 1825, 1800, +25 −20
          1800, 1799.988, 1800.012, 1800.000, ± 0.012
          40000, 25000, null, 40000, +∞ −15000
          """)
  void aRadiusHasTheDigitsThatItsUncertaintySupports(
      String radius, String lower, String upper, String value, String plusMinus) {
    String call =
        "radius({radiusMm: %s, lowerMm: %s, upperMm: %s})".formatted(radius, lower, upper);
    assertEquals(value, evaluated("mm", "units", call + ".value"));
    assertEquals(plusMinus == null ? "" : plusMinus, evaluated("mm", "units", call + ".plusMinus"));
  }

  /** One rule for pages, report and commands. */
  @ParameterizedTest
  @CsvSource({"0.00021", "0.012", "0.099", "0.1", "0.6", "1.25", "7", "9.99", "10", "22.5", "400"})
  void aRadiusHasAsManyDecimalsAsTheServiceGivesIt(double expandedMm) {
    String call =
        "radius({radiusMm: 1800, lowerMm: 1800 - %s, upperMm: 1800 + %s}).digits"
            .formatted(expandedMm, expandedMm);
    String inMm = String.valueOf(Lengths.decimals(expandedMm));
    assertEquals(inMm, evaluated("mm", "units", call));
    assertEquals(
        String.valueOf(Lengths.decimals(expandedMm / 25.4)), evaluated("inch", "units", call));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 seconds", "1999, 1 second", "119999, 119 seconds", "120000, 2 minutes",
    "7200000, 2 hours", "172799999, 47 hours", "172800000, 2 days", "-5, 0 seconds"
  })
  void aSpanOfTimeIsSaidInTheUnitThatFits(long millis, String words) {
    assertEquals(words, evaluated("mm", "times", "span(" + millis + ")"));
  }

  /** As browsers name that of a computer which has none, or one by a rule of its own. */
  @ParameterizedTest
  @CsvSource({"Europe/Vienna, Europe/Vienna", "Etc/Unknown, UTC", "'', UTC"})
  void aReportIsAskedForInAZoneThatIsKnown(String named, String zone) {
    assertEquals(zone, evaluated("mm", "times", "zone('%s')".formatted(named)));
  }

  /** A form: fields made by the module, filled as typed, read back. */
  @ParameterizedTest
  @CsvSource(
      nullValues = "none",
      textBlock =
          """
          length, mm, 12.5, none, 12.5
          length, inch, 1800, none, 1800
          length, inch, 1800, 70.5, 1790.7
          length, mm, 12.5, '', null
          length, mm, 12.5, wide, wide
          number, mm, 3, '4,5', 4.5
          text, mm, hoop, ' arch ', arch
          """)
  void aFormGivesBackWhatWasTypedInMillimetres(
      String kind, String unit, String value, String typed, String read) {
    String given = kind.equals("text") ? "'" + value + "'" : value;
    String type = typed == null ? "" : "input.value = '" + typed + "';";
    String expression =
        ("(() => { const form = document.createElement('form'); form.append(field({name: 'x',"
                + " label: 'X', kind: '%s', value: %s})); const input = form.querySelector('input');"
                + " %s return values(form).x; })()")
            .formatted(kind, given, type);
    assertEquals(read, evaluated(unit, "forms", expression));
  }

  /** Every fault is put at the field that it names, in its words; the rest is said in general. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {field: 'x', problem: 'is missing', allowed: '1 to 80 characters'} | Is missing. Allowed: 1 to 80 characters. |
          {field: 'y', problem: 'is missing', allowed: ''}                   |             | Y is missing.
          """)
  void aFaultIsShownWhereItBelongs(String fault, String atField, String general) {
    String expression =
        ("(() => { const form = document.createElement('form');"
                + " document.body.replaceChildren(form); form.append(field({name: 'x', label: 'X'}),"
                + " Object.assign(document.createElement('p'), {className: 'fault general'}));"
                + " showFaults(form, {faults: [%s]}); return"
                + " [...form.querySelectorAll('.fault')].map(e => e.textContent).join('|'); })()")
            .formatted(fault);
    String shown = (atField == null ? "" : atField) + "|" + (general == null ? "" : general);
    assertEquals(shown, evaluated("mm", "forms", expression));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {name: 'n', unit: '', value: 12}                      | 12     | 12
          {name: 'mean', unit: 'mm', value: 1800.126}           | 1800.13| 70.8711
          {name: 'range', unit: 'mm', value: 0.5}               | 0.500  | 0.01969
          {name: 'Cpk', unit: '', value: 1.2349}                | 1.23   | 1.23
          {name: 'normalityPValue', unit: '', value: 0.0421}    | 0.042  | 0.042
          {name: 'expectedPpmWithin', unit: 'ppm', value: 0.02} | < 0.1  | < 0.1
          {name: 'expectedPpmWithin', unit: 'ppm', value: 340.4}| 340    | 340
          {name: 'Cp', unit: '', value: null}                   | –      | –
          """)
  void aFigureHasTheDigitsOfItsKind(String figure, String mm, String inch) {
    assertEquals(mm, evaluated("mm", "figure-words", "figureText(" + figure + ")"));
    assertEquals(inch, evaluated("inch", "figure-words", "figureText(" + figure + ")"));
  }

  private static String evaluated(String unit, String module, String expression) {
    String script = EVALUATED.formatted(expression);
    return String.valueOf(browser.executeAsyncScript(script, unit, module));
  }
}
