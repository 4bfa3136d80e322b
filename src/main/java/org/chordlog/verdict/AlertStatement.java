package org.chordlog.verdict;

import static org.chordlog.measure.alert.AlertFigure.CHANGE;
import static org.chordlog.measure.alert.AlertFigure.CHANGE_PER_PIECE;
import static org.chordlog.measure.alert.AlertFigure.CHANGE_PER_PIECE_LOWER;
import static org.chordlog.measure.alert.AlertFigure.CHANGE_PER_PIECE_UPPER;
import static org.chordlog.measure.alert.AlertFigure.CORRECTIONS;
import static org.chordlog.measure.alert.AlertFigure.DAYS_LEFT;
import static org.chordlog.measure.alert.AlertFigure.DEVIATION_MM;
import static org.chordlog.measure.alert.AlertFigure.FAULTS;
import static org.chordlog.measure.alert.AlertFigure.FREE_BYTES;
import static org.chordlog.measure.alert.AlertFigure.HOURS;
import static org.chordlog.measure.alert.AlertFigure.HOURS_LEFT;
import static org.chordlog.measure.alert.AlertFigure.LAYOUTS_AHEAD;
import static org.chordlog.measure.alert.AlertFigure.MASTER_MM;
import static org.chordlog.measure.alert.AlertFigure.MINUTES;
import static org.chordlog.measure.alert.AlertFigure.PIECES;
import static org.chordlog.measure.alert.AlertFigure.PIECES_LEFT;
import static org.chordlog.measure.alert.AlertFigure.PIECES_LEFT_AT_LEAST;
import static org.chordlog.measure.alert.AlertFigure.READINGS;
import static org.chordlog.measure.alert.AlertFigure.READINGS_IN_DOUBT;
import static org.chordlog.measure.alert.AlertFigure.RECORDS;
import static org.chordlog.measure.alert.AlertFigure.SECONDS_AHEAD;
import static org.chordlog.measure.alert.AlertFigure.SINCE_PIECE;
import static org.chordlog.measure.alert.AlertFigure.STATIONS;
import static org.chordlog.measure.alert.AlertFigure.TARGET_MM;
import static org.chordlog.measure.alert.AlertFigure.TOLERANCE_MM;

import java.util.Locale;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertSubject;
import org.jspecify.annotations.Nullable;

/** An alert in words: what it is, on what evidence, what comes of it, and what to do. */
public record AlertStatement(Alert alert) {
  private static final double HUNDRED = 100;
  private static final double GIGABYTE = 1e9;
  private static final int SECONDS = 60;
  private static final double LEAST_HOURS = 0.1;

  /** What is wrong, with its figures as the reason. */
  public Statement statement() {
    return new Statement(
        AlertWords.tone(alert.treatedAs().priority()),
        title(),
        evidence().and(judged()).and(unsteady()),
        Sentence.plain(AlertWords.whatToDo(alert.treatedAs())));
  }

  /** What is wrong, in a few words. */
  public String title() {
    return told(AlertWords.of(alert.kind()));
  }

  private String told(String what) {
    return alert.treatedAs() == alert.kind() ? what : what + ", limit near";
  }

  /** Where and what in one line: "Machine PB-3: creeping", "Station north: zero is old". */
  public String headline() {
    return AlertWords.of(alert.subject()) + ": " + told(AlertWords.behindName(alert.kind()));
  }

  /** Its figures stay those of that moment, while the machine's own status goes on. */
  private Sentence judged() {
    Double pieces = alert.evidence().figure(PIECES);
    return pieces == null || alert.subject().type() != AlertSubject.Type.MACHINE
        ? Sentence.EMPTY
        : Sentence.plain("Judged after " + Counted.of(Math.round(pieces), "piece") + ".");
  }

  private Sentence unsteady() {
    return alert.status().unsteady()
        ? Sentence.plain("It is unsteady: it comes and goes, so only the first time is told.")
        : Sentence.EMPTY;
  }

  /** The figures as a sentence or two. */
  public Sentence evidence() {
    return switch (alert.kind()) {
      case ROLLER_CREEPS -> creep();
      case ROLLER_JUMPED ->
          Sentence.of(
              "Since piece %.0f its pieces come out %s.", figure(SINCE_PIECE), change(CHANGE, 1));
      case LIMIT_AHEAD -> figure(SINCE_PIECE) > 0 ? creep() : limit();
      case GAUGE_UNFIT -> check();
      case ZERO_OLD -> Sentence.of("Zero was set %.0f h ago.", figure(HOURS));
      case CALIBRATION_DUE -> calibration();
      case LINK_LOST ->
          Sentence.of("For %.0f min, while a job is open.", figure(MINUTES)).and(detail());
      case NETWORK_LOST ->
          Sentence.of("%.0f stations within a minute:", figure(STATIONS)).and(detail());
      case READINGS_NOT_KEPT -> counted(READINGS, "reading", " could not be stored.").and(detail());
      case RECORD_ALTERED ->
          counted(FAULTS, "fault", figure(FAULTS) == 1 ? " was found." : " were found.")
              .and(detail());
      case DISK_LOW -> Sentence.of("%.1f GB are free.", figure(FREE_BYTES) / GIGABYTE);
      case BACKUP_OLD -> Sentence.of("The newest backup is %.0f h old.", figure(HOURS));
      case CERTIFICATE_ENDS -> days("The certificate", "The certificate expired %s ago.");
      case EDGE_SILENT -> silent();
      case EDGE_BEGAN_ANEW -> Sentence.of("%s.", alert.evidence().detail());
      case EDGE_VERSION_DIFFERS -> version();
      case EDGE_CLOCK_WRONG -> EdgeStatement.clock(Math.round(figure(SECONDS_AHEAD)));
    };
  }

  private Sentence silent() {
    return Sentence.of(
        "Nothing was heard from it for %s; %s.",
        EdgeStatement.time(Math.round(figure(MINUTES)) * SECONDS), waiting());
  }

  /** What of its records was not delivered when it was last heard. */
  public String waiting() {
    long records = Math.round(figure(RECORDS));
    return records == 0
        ? "all that it had recorded until then is here"
        : Counted.grouped(records, "record") + (records == 1 ? " was" : " were") + " waiting then";
  }

  private Sentence version() {
    String which = figure(LAYOUTS_AHEAD) > 0 ? "newer" : "older";
    return Sentence.of("It has Chordlog %s, which is %s.", alert.evidence().detail(), which)
        .and(
            Sentence.plain(
                figure(LAYOUTS_AHEAD) > 0
                    ? "The plant may not take its records until it is updated."
                    : "The plant takes its records."));
  }

  private Sentence creep() {
    return alert.evidence().figure(PIECES_LEFT) == null ? moved() : moved().and(limit());
  }

  private Sentence moved() {
    return alert.evidence().figure(CHANGE_PER_PIECE) == null
        ? Sentence.of(
            "Since piece %.0f its pieces come out %s; whether at once or piece by piece can't be"
                + " told yet.",
            figure(SINCE_PIECE), change(CHANGE, 1))
        : creepByPiece();
  }

  private Sentence creepByPiece() {
    return Sentence.of(
        "Since piece %.0f its pieces get %s per 100 pieces (95 %% sure: %s)%s.",
        figure(SINCE_PIECE), change(CHANGE_PER_PIECE, HUNDRED), range(), corrected());
  }

  private String range() {
    return SlopeInterval.words(
        HUNDRED * figure(CHANGE_PER_PIECE_LOWER), HUNDRED * figure(CHANGE_PER_PIECE_UPPER));
  }

  private String corrected() {
    long count = Math.round(figure(CORRECTIONS));
    return count == 0 ? "" : ", although the rollers were corrected " + Counted.times(count);
  }

  private Sentence limit() {
    Sentence which =
        MachineStatement.limit(figure(TOLERANCE_MM), alert.evidence().figure(TARGET_MM));
    return figure(PIECES_LEFT) <= 0
        ? Sentence.of("Its pieces are past %s already.", which)
        : Sentence.of(
            "At this pace its pieces reach %s after about %.0f more%s%s.",
            which, figure(PIECES_LEFT), hours(), earliest());
  }

  private String hours() {
    double hours = figure(HOURS_LEFT);
    return hours < LEAST_HOURS ? "" : String.format(Locale.ROOT, " (%.1f h of bending)", hours);
  }

  private String earliest() {
    Double least = alert.evidence().figure(PIECES_LEFT_AT_LEAST);
    return least == null
        ? ""
        : least < 1
            ? ", perhaps at once"
            : String.format(Locale.ROOT, ", after %.0f at the earliest", least);
  }

  private Sentence check() {
    Double off = alert.evidence().figure(DEVIATION_MM);
    Sentence by =
        off == null
            ? Sentence.plain("The last check on a master failed.")
            : Sentence.of(
                "The last check was off by %s%s.",
                Quantity.uncertainty(off).withSign(), onMaster());
    return by.and(
        Sentence.plain(count(READINGS_IN_DOUBT, "reading") + " since the last passed one."));
  }

  private Sentence onMaster() {
    Double master = alert.evidence().figure(MASTER_MM);
    return master == null
        ? Sentence.EMPTY
        : Sentence.of(" on a master of %s", Quantity.stated(master));
  }

  private Sentence calibration() {
    return days("The calibration", "The calibration is overdue by %s.");
  }

  private Sentence days(String what, String past) {
    long left = Math.round(figure(DAYS_LEFT));
    String days = Counted.of(Math.abs(left), "day");
    return Sentence.plain(
        left < 0
            ? past.formatted(days)
            : left == 0 ? what + " ends today." : what + " ends in " + days + ".");
  }

  private Sentence counted(AlertFigure of, String noun, String more) {
    return figure(of) > 0 ? Sentence.plain(count(of, noun) + more) : Sentence.EMPTY;
  }

  private String count(AlertFigure of, String noun) {
    return Counted.of(Math.round(figure(of)), noun);
  }

  private Sentence detail() {
    return Sentence.plain(alert.evidence().detail());
  }

  private Sentence change(AlertFigure figure, double times) {
    @Nullable Double target = alert.evidence().figure(TARGET_MM);
    return MachineStatement.tighter(times * figure(figure), target);
  }

  private double figure(AlertFigure figure) {
    Double value = alert.evidence().figure(figure);
    return value == null ? 0 : value;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "%s: %s", AlertWords.of(alert.subject()), statement().reason());
  }
}
