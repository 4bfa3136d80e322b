package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** One inch is exactly 25.4 mm (international yard and pound agreement of 1959). */
final class ViewUnitTest {
  private static final PictureSize SIZE = new PictureSize(1000, 560);

  /**
   * What is read on a machine's scale stays in its unit, held to its number by a no-break space.
   */
  private static final Pattern OWN_UNIT = Pattern.compile("\u00a0mm\\b");

  private static final Pattern LENGTH = Pattern.compile("(-?[0-9.]+) (mm|in)\\b");

  @ParameterizedTest
  @EnumSource(
      mode = EnumSource.Mode.EXCLUDE,
      names = {"DRIFT", "CORRECTIONS", "ROLLER_RIPPLES"})
  void everyLengthOfAChartIsInInches(PictureKind kind) {
    ChartPicture mm = draw(kind, ViewUnit.MM);
    ChartPicture inch = draw(kind, ViewUnit.INCH);
    Svg.keep(kind.name() + "-inch", inch);
    assertEquals(mm.places().size(), inch.places().size());
    int told = 0;
    for (int i = 0; i < mm.places().size(); i++) {
      PointPlace shown = inch.places().get(i);
      assertFalse(OWN_UNIT.matcher(shown.label()).replaceAll("").contains("mm"), shown::label);
      told += sameLength(mm.places().get(i).label(), shown.label());
      assertEquals(mm.places().get(i).yPx(), shown.yPx(), 0.01, shown::label);
    }
    assertTrue(told > 0);
    assertFalse(LENGTH.matcher(inch.svg()).results().anyMatch(each -> each.group(2).equals("mm")));
    // the names of upright axes are drawn as outlines, so that only lying ones can be read
    String described = Svg.parse(inch.svg()).getDocumentElement().getAttribute("aria-label");
    assertTrue(inch.svg().contains(">Radius, in<") || described.contains(" in"), described);
  }

  @ParameterizedTest
  @EnumSource(
      mode = EnumSource.Mode.INCLUDE,
      names = {"DRIFT", "CORRECTIONS", "ROLLER_RIPPLES"})
  void percentAndTheScalesOwnUnitStay(PictureKind kind) {
    assertEquals(draw(kind, ViewUnit.MM).svg(), draw(kind, ViewUnit.INCH).svg());
  }

  /** The first length of both, equal to the last decimal shown. */
  private static int sameLength(String mm, String inch) {
    Matcher given = LENGTH.matcher(mm);
    Matcher shown = LENGTH.matcher(inch);
    if (!given.find()) {
      return 0;
    }
    assertTrue(shown.find(), inch);
    assertEquals("in", shown.group(2));
    int decimals = shown.group(1).length() - 1 - shown.group(1).indexOf('.');
    double step = Math.pow(10, -decimals);
    int places = given.group(1).contains(".") ? given.group(1).split("\\.", -1)[1].length() : 0;
    double given1 = Math.pow(10, -places) / 25.4;
    assertEquals(
        Double.parseDouble(given.group(1)) / 25.4,
        Double.parseDouble(shown.group(1)),
        (step + given1) * 0.51,
        inch);
    return 1;
  }

  private static ChartPicture draw(PictureKind kind, ViewUnit unit) {
    return SvgWriter.write(kind.draw(unit.of(new Snapshots())).orElseThrow(), SIZE, Theme.PAGE);
  }
}
