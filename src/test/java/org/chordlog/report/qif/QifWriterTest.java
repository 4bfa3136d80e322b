package org.chordlog.report.qif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.api.Test;

/** What the document says, and that equal input gives equal bytes. */
final class QifWriterTest {
  private static final int COUNT = 36;

  private static final Pattern EXPONENT =
      Pattern.compile("<(Value|MaxValue|MinValue|TargetValue)[^>]*>[^<]*[eE]");

  private static String text(QifJob job) {
    return new String(QifJobs.bytes(job), StandardCharsets.UTF_8);
  }

  /** The golden file, made by this program and validated; a change of format has to be meant. */
  @Test
  void isTheGoldenFileByteForByte() throws Exception {
    byte[] written = QifJobs.bytes(QifJobs.small(12));
    Path seen = Path.of("target/qif-golden-seen.qif");
    Files.createDirectories(Objects.requireNonNull(seen.getParent()));
    Files.write(seen, written);
    try (var golden = QifWriterTest.class.getResourceAsStream("/qif/job.qif")) {
      assertArrayEquals(
          Objects.requireNonNull(golden, "src/test/resources/qif/job.qif").readAllBytes(),
          written,
          "differs from " + seen);
    }
  }

  @Test
  void equalInputGivesEqualBytesAndOtherInputAnotherIdentity() {
    byte[] first = QifJobs.bytes(QifJobs.small(COUNT));
    assertArrayEquals(first, QifJobs.bytes(QifJobs.small(COUNT)));
    assertNotEquals(
        line(text(QifJobs.small(COUNT)), "<QPId>"), line(text(QifJobs.small(12)), "<QPId>"));
  }

  private static String line(String text, String start) {
    return text.lines().filter(line -> line.startsWith(start)).findFirst().orElseThrow();
  }

  @Test
  void decisionsFlatsOpenIntervalsAndExclusions() {
    String text = text(QifJobs.small(COUNT));
    String flat = measurement(text, 4);
    assertTrue(flat.contains("<CharacteristicStatusEnum>INDETERMINATE<"), flat);
    assertFalse(flat.contains("<Value"), "a flat has no value: " + flat);
    assertTrue(flat.contains("name=\"flatAboveRadiusMm\" value=\"90000.0\""), flat);
    String open = measurement(text, 5);
    assertTrue(open.contains(">150000.0000</Value>"), open);
    assertFalse(open.contains("upperMm"), open);
    String excluded = measurement(text, 9);
    assertTrue(excluded.contains("name=\"excludedFromStatistics\" value=\"slipped\""), excluded);
    assertEquals(1, text.split("<OtherExclusionReason>slipped<", -1).length - 1);
    String master = measurement(text, 8);
    assertTrue(master.contains("name=\"kind\" value=\"MASTER\""), master);
    assertTrue(master.contains("name=\"measuredBy\" value=\"M. Okafor\""), master);
    assertFalse(EXPONENT.matcher(text).find(), "a decimal has no exponent");
  }

  /** The element of a reading. */
  private static String measurement(String text, long readingId) {
    int at = text.indexOf("name=\"readingId\" value=\"" + readingId + "\"");
    int start = text.lastIndexOf("<RadiusCharacteristicMeasurement", at);
    return text.substring(start, text.indexOf("</RadiusCharacteristicMeasurement>", at));
  }

  /** Piece 1 is measured again as the twelfth reading: two groups, one component. */
  @Test
  void aPieceMeasuredAgainIsOneComponent() throws Exception {
    String text = text(QifJobs.small(COUNT));
    assertEquals(1, text.split("<SerialNumber>7-1</SerialNumber>", -1).length - 1);
    assertTrue(
        Integer.parseInt(attribute(text, "<MeasurementResultsSet n=\""))
            > Integer.parseInt(attribute(text, "<ActualComponentSet n=\"")));
  }

  private static String attribute(String text, String start) {
    int from = text.indexOf(start) + start.length();
    return text.substring(from, text.indexOf('"', from));
  }

  /** QIF's element is "from the average range", its Relative ones are relative to the tolerance. */
  @Test
  void elementsHoldWhatTheirDefinitionsSay() {
    String text = text(QifJobs.small(COUNT));
    assertEquals(1, text.split("<EstimatedStandardDeviation>", -1).length - 1, "ranges at middle");
    double gauge = value(text, "GageRandR");
    assertEquals(6 * gauge / 24, value(text, "RelativeGageRandR"), 1e-8);
    assertTrue(text.contains("name=\"percentGRRUpper\""));
    assertTrue(text.contains("<NumberOfAppraisers>3<"));
    assertTrue(text.contains("name=\"process: Q_MP\""), "no element: an attribute");
    assertTrue(text.contains("<GoodnessOfFit"));
    assertTrue(text.contains("test 1 broken: beyond a limit"));
  }

  private static double value(String text, String element) {
    int at = text.indexOf("<Value", text.indexOf("<" + element + ">"));
    return Double.parseDouble(text.substring(text.indexOf('>', at) + 1, text.indexOf('<', at + 1)));
  }

  @Test
  void textThatXmlCannotHoldIsReplaced() throws Exception {
    assertEquals("a\uFFFDb & <c>", QifXml.clean("a\u0000b & <c>"));
    assertEquals("\uFFFD", QifXml.clean("\uD800"));
    assertEquals("😀", QifXml.clean("😀"));
    QifJob job = QifJobs.small(6);
    QifJob odd = new QifJob("x<&\u0001", "0.1.0", job.job(), job.readings(), List.of(), List.of());
    assertEquals(List.of(), QifChecks.faults(QifJobs.bytes(odd)));
  }

  @Test
  void readingsThatChangeMeanwhileAreSaid() {
    QifJob job = QifJobs.small(6);
    int[] times = {0};
    QifReadings shrinking =
        new QifReadings() {
          @Override
          public Iterator<QifReading> all() {
            return times[0]++ == 0 ? job.readings().all() : List.<QifReading>of().iterator();
          }

          @Override
          public SetUp setUp(long id) {
            return job.readings().setUp(id);
          }
        };
    QifJob changing = new QifJob("db", "0.1.0", job.job(), shrinking, List.of(), List.of());
    assertThrows(IllegalStateException.class, () -> QifJobs.bytes(changing));
  }

  /** Each reading is made anew when it is asked for, and none is held. */
  @Test
  void anyNumberOfReadingsGoesThrough() throws Exception {
    long[] bytes = {0};
    OutputStream counted =
        new OutputStream() {
          @Override
          public void write(int b) {
            bytes[0]++;
          }

          @Override
          public void write(byte[] b, int from, int length) {
            bytes[0] += length;
          }
        };
    QifWriter.write(QifJobs.large(20_000), counted);
    assertTrue(bytes[0] > 20_000 * 500L, bytes[0] + " bytes");
  }
}
