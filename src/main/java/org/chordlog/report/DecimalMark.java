package org.chordlog.report;

import org.apache.commons.csv.CSVFormat;
import org.chordlog.measure.CsvText;
import org.jspecify.annotations.Nullable;

/**
 * How a CSV file writes its numbers: as RFC 4180 has it, or as spreadsheets read it where a comma
 * is the decimal mark, with semicolons between the cells. They take 1.5 there for a text or a day
 * in May.
 */
public enum DecimalMark {
  POINT,
  COMMA;

  /** Of the whole file. */
  public CSVFormat format() {
    return this == POINT ? CSVFormat.RFC4180 : CSVFormat.RFC4180.builder().setDelimiter(';').get();
  }

  /** A cell as it is printed: texts begin no formula, fractions have this mark. */
  public @Nullable Object cell(@Nullable Object cell) {
    return this == COMMA && cell instanceof Double number
        ? number.toString().replace('.', ',')
        : CsvText.harmless(cell);
  }
}
