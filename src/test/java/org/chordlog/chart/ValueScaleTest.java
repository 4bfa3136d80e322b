package org.chordlog.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a value axis shows, and in how many digits. */
final class ValueScaleTest {
  @Test
  void limitsAreLeftOutWhereTheyWouldFlattenThePoints() {
    ValueScale scale = ValueScale.of(List.of(-0.059, -0.060, -0.061), List.of(-0.667, 0.667));
    assertFalse(scale.shows(0.667));
    assertEquals(3, scale.decimals(2.0 / 3));
    assertEquals(2, scale.decimals(1812.5));
  }

  @Test
  void equalValuesStandBetweenTheirLimits() {
    ValueScale scale = ValueScale.of(List.of(-0.0597, -0.0597), List.of(-2.0 / 3, 2.0 / 3));
    assertTrue(scale.shows(2.0 / 3) && scale.shows(-2.0 / 3));
    assertEquals(2, scale.decimals(2.0 / 3));
  }

  @Test
  void equalValuesWithoutLimitsHaveHeight() {
    assertTrue(ValueScale.of(List.of(1801.07, 1801.07), List.of()).height() > 1);
    assertEquals(2, ValueScale.of(List.of(0.0), List.of()).height());
  }

  /**
   * One rule for the labels of all charts: no more than a hundredth of the height is rounded off.
   */
  @ParameterizedTest
  @ValueSource(doubles = {2e-7, 0.0049, 0.0051, 0.1, 0.31, 1, 3.7, 5.1, 9.99, 24, 50, 800, 5e6})
  void labelsHaveTheDecimalsThatTheHeightOfTheAxisNeeds(double height) {
    int decimals = new ValueScale(1800, 1800 + height).decimals();
    double roundedOff = Math.pow(10, -decimals) / 2;
    assertTrue(roundedOff <= height / 100, decimals + " decimals");
    assertTrue(decimals == 0 || roundedOff > height / 1100, decimals + " decimals");
  }
}
