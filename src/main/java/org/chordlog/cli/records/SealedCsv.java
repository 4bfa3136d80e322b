package org.chordlog.cli.records;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.cli.common.UnreadableFile;
import org.chordlog.measure.BadInput;
import org.chordlog.report.CsvSeal;

/** Readings as CSV with the seal in the last line; {@code faults} where the sum differs. */
record SealedCsv(CsvSeal seal, List<CSVRecord> rows, List<String> faults) {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

  private static final String BYTE_ORDER_MARK = "\ufeff";

  /** What a spreadsheet fills the last line up with. */
  private static final String FILLED_UP = "[,;\"\\s]+$";

  static SealedCsv read(Path file) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      String text = new String(bytes, StandardCharsets.ISO_8859_1); // a char is a byte
      int at = text.lastIndexOf(CsvSeal.BEGIN);
      CsvSeal seal = at < 0 ? null : CsvSeal.read(text.substring(at).replaceAll(FILLED_UP, ""));
      if (seal == null) {
        throw new BadInput(
            "FILE", file, "has no seal in its last line", "readings exported with --seal, whole");
      }
      return new SealedCsv(seal, rows(bytes, at), sumFaults(seal, CsvSeal.sum(bytes, at)));
    } catch (IOException e) {
      throw UnreadableFile.of("FILE", file, e);
    }
  }

  private static List<String> sumFaults(CsvSeal seal, String sum) {
    return seal.sha256().equals(sum)
        ? List.of()
        : List.of(
            "the file was changed after it was exported: its sum differs"
                + " (a spreadsheet changes a file when it saves it)");
  }

  private static List<CSVRecord> rows(byte[] bytes, int length) throws IOException {
    String text = new String(bytes, 0, length, StandardCharsets.UTF_8);
    return parse(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
  }

  /** Without the seal's line. */
  static List<CSVRecord> parse(String text) throws IOException {
    try (CSVParser parser = CSVParser.parse(text, FORMAT)) {
      return parser.getRecords();
    }
  }
}
