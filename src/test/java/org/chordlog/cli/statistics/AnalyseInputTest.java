package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.chordlog.Await;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Children;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Input that analyse refuses, in words that name what is wrong. */
final class AnalyseInputTest extends AnalyseRuns {
  @Test
  void aWrongFileOrColumnIsToldInWords() throws Exception {
    Ran unknown = run("piece;radius\n1;9\n", "--column", "depth");
    assertEquals("--column: depth is not a column; allowed: piece, radius", unknown.err().strip());
    String which = "--column is needed where there are several columns; allowed: piece, radius";
    assertEquals(which, run("piece;radius\n1;9\n").err().strip());
    String none = folder.resolve("none.csv").toString();
    String said =
        "FILE: " + none + " does not exist; allowed: a CSV file; check its name and folder";
    assertEquals(said, Ran.command("analyse", none).err().strip());
  }

  @ParameterizedTest
  @CsvSource({
    "--sigma-column value, --sigma-column",
    "--position-column nope, --position-column",
    "--nominal-column value --sigma-column 9, --sigma-column",
    "--lsl 5 --usl 4, --lower: 5",
    "--lsl x, --lsl",
    "--subgroup 26, --subgroup",
    "--tests 9, --tests",
    "'--lsl 1,788', '--lsl: 1,788 could be a decimal comma or thousands'",
    "--column nope, --column"
  })
  void badInputNamesTheField(String options, String field) throws IOException {
    Ran ran = run("value\n1\n2\n", options.split(" ", -1));
    assertEquals(ExitCode.BAD_INPUT, ran.code());
    assertTrue(ran.err().startsWith(field), ran.err());
    assertFalse(ran.err().contains("\tat "));
  }

  @Test
  void missingAndEmptyFilesAreBadInput() throws IOException {
    assertEquals(ExitCode.BAD_INPUT, run("").code());
    assertEquals(
        ExitCode.BAD_INPUT, Ran.command("analyse", folder.resolve("none").toString()).code());
    Ran heading = run("piece;radius\n", "--column", "radius");
    assertEquals(ExitCode.BAD_INPUT, heading.code());
    assertTrue(heading.err().contains("has no row below its heading"), heading.err());
  }

  /** As from the shell's {@code <(…)}: another program writes it, once. */
  @Test
  void aPipeIsReadAsAFileIs() throws Exception {
    Path pipe = folder.resolve("pipe");
    Process made = new ProcessBuilder("mkfifo", pipe.toString()).start();
    assertEquals(0, made.waitFor());
    Process writer =
        Children.start(
            new ProcessBuilder("sh", "-c", "printf 'piece;radius\\n1;9\\n2;8\\n' > " + pipe));
    Ran ran = Ran.command("analyse", pipe.toString(), "--column", "radius");
    assertTrue(ran.out().startsWith("radius: 2 readings"), ran::toString);
    Await.end(writer);
  }

  /** As a spreadsheet writes 1800 that it shows with thousands divided; none is taken as 1.8. */
  @ParameterizedTest
  @ValueSource(strings = {"piece,radius\n1,\"1,800\"\n2,\"1,801\"\n", "radius\n1799\n\"1,801\"\n"})
  void aCommaThatCouldDivideThousandsIsRefused(String csv) throws IOException {
    Ran ran = run(csv, "--column", "radius");
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertTrue(ran.err().contains("could be a decimal comma or thousands"), ran.err());
    assertTrue(ran.err().contains("column radius: 1,80"), ran.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"piece;radius\n1;12,125\n2;12,135\n", "radius\n12,125\n12,135\n"})
  void elsewhereItIsADecimalComma(String csv) throws IOException {
    Ran ran = run(csv, "--column", "radius");
    assertTrue(ran.out().contains("12.13"), ran::toString);
  }

  /** To leave such a line out would bend the statistics. */
  @ParameterizedTest
  @ValueSource(strings = {"1.001,8", "1 001,8", "1001 mm", "12:30"})
  void aLineThatBeginsAsANumberIsNotLeftOut(String cell) throws IOException {
    Ran ran = run("piece;radius\n1;998,5\n2;" + cell + "\n3;n/a\n", "--column", "radius");
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertTrue(ran.err().startsWith("row 3, column radius: " + cell), ran.err());
  }

  @Test
  void aHeadingThatIsThereTwiceIsRefused() throws IOException {
    Ran ran = run("Radius;radius\n1;998,5\n", "--column", "radius");
    assertEquals("heading: radius is there twice; allowed: each heading once", ran.err().strip());
    Ran quoted = run("\uFEFF\"radius\",\"piece; no\"\n998.5,1\n", "--column", "RADIUS");
    assertTrue(quoted.out().contains("998.5"), quoted::toString);
  }

  /** What is printed here has a true minus, and may be copied. */
  @Test
  void aTrueMinusIsReadAsAHyphenIs() throws IOException {
    Ran ran = run("deviation\n\u22121.5\n-0.5\n0.5\n", "--lsl", "\u22122", "--usl", "2");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(ran.out().startsWith("deviation: 3 readings"), ran.out());
    assertTrue(ran.out().contains("\u22121.5 "), ran.out());
    assertEquals(onAnInnerFace("-2.5"), onAnInnerFace("\u22122.5"));
  }

  private static String onAnInnerFace(String depth) {
    Ran ran = Ran.command("radius", "--span", "200", "--face", "inner", "--depth", depth);
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    return ran.out();
  }

  @Test
  void aColumnWithoutAnyNumberIsRefused() throws IOException {
    Ran ran = run("value\nNaN\nx\n", "--lsl", "1");
    assertEquals(ExitCode.BAD_INPUT, ran.code(), ran.out());
    assertEquals(
        "--column: value has no line with a number that counts; allowed: a column of numbers",
        ran.err().strip());
  }

  @Test
  void whereAllLinesAreExcludedThereIsNothingToJudge() throws IOException {
    Ran ran = run("value;excluded_reason\n5;slipped\n", "--column", "value", "--lsl", "1");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertTrue(ran.out().contains("There are no readings."), ran.out());
  }
}
