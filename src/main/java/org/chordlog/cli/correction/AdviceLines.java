package org.chordlog.cli.correction;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.Aim;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** One JSON object a line to what the corrector is told, and its advice back. */
final class AdviceLines {
  private static final String KNOWN =
      "one of setUp, lot, correction, piece, target, job, gauge with its object";

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS).build();

  private final LengthOptions lengths;
  private final Corrector corrector;
  private final String unit;
  private final double uncertaintyMm;
  private final LotYields yields;
  private JobStart job;
  private int piece;

  /** Why the gauge can't be relied on now, else empty: then pieces are left out. */
  private String doubt = "";

  AdviceLines(JobOptions options, ScaleOptions scale) {
    lengths = options.lengths();
    job = options.start();
    yields = new LotYields(options);
    var machine = scale.scale(options.targetMm(), lengths);
    unit = machine.unit();
    uncertaintyMm = options.uncertaintyMm();
    corrector = new Corrector(machine, options.tuning());
    corrector.tell(job);
  }

  /** {@link BadInput} for a line that is not understood; then nothing has changed. */
  AdviceAnswer take(String line) {
    JsonNode root = parsed(line);
    List<String> names = new ArrayList<>();
    root.fieldNames().forEachRemaining(names::add);
    if (!root.isObject() || names.size() != 1) {
      throw new BadInput("line", shortened(line), "is not one object with one name", KNOWN);
    }
    JsonNode value = root.get(names.get(0));
    switch (names.get(0)) {
      case "setUp" -> setUp(new JsonFields("setUp", value, "setting"));
      case "lot" -> lot(value);
      case "correction" ->
          correction(new JsonFields("correction", value, "before", "after", "amount", "unit"));
      case "piece" -> piece(value);
      case "target" -> target(new JsonFields("target", value, LIMITS));
      case "job" -> job(new JsonFields("job", value, JOB));
      case "gauge" -> doubt = new JsonFields("gauge", value, "doubt").text("doubt", "");
      default -> throw new BadInput("line", names.get(0), "is not known", KNOWN);
    }
    return AdviceAnswer.of(corrector.snapshot(doubt), lengths.lengths());
  }

  private static final String[] LIMITS = {"targetMm", "toleranceMm", "lowerMm", "upperMm"};
  private static final String[] JOB = {
    "targetMm", "toleranceMm", "lowerMm", "upperMm", "part", "section", "lot", "pieces"
  };

  private static JsonNode parsed(String line) {
    try {
      JsonNode root = MAPPER.readTree(line);
      return root == null ? MAPPER.createObjectNode() : root;
    } catch (JsonProcessingException e) {
      throw new BadInput("line", shortened(line), "is not JSON", "one JSON object a line");
    }
  }

  private static String shortened(String line) {
    return line.length() > 80 ? line.substring(0, 80) + "…" : line;
  }

  private void setUp(JsonFields fields) {
    corrector.tell(new Told.SetUp(fields.number("setting")));
  }

  private void lot(JsonNode value) {
    if (value.isTextual()) {
      lot(value.asText(), null);
    } else {
      lot(lotFields(value));
    }
  }

  private static JsonFields lotFields(JsonNode value) {
    if (!value.isObject()) {
      throw new BadInput(
          "lot", value, "is not a name", "a text in quotes, {\"name\":…,\"yieldMpa\":…}");
    }
    return new JsonFields("lot", value, "name", "yieldMpa");
  }

  private void lot(JsonFields fields) {
    lot(fields.text("name", ""), fields.number("yieldMpa"));
  }

  private void lot(String name, @Nullable Double yieldMpa) {
    corrector.tell(yields.next(name, yieldMpa, job.aim().targetMm()));
    yields.changed(yieldMpa);
  }

  private void correction(JsonFields fields) {
    String named = fields.text("unit", unit);
    if (!named.equals(unit)) {
      throw new BadInput("correction.unit", named, "is not this scale's", unit);
    }
    Double before = fields.number("before");
    Double after = fields.number("after");
    Double amount = fields.number("amount");
    if (((before == null) != (after == null)) || (before != null && amount != null)) {
      throw new BadInput(
          "correction", fields, "is not complete", "before and after, or amount, or neither");
    }
    if (before != null && after != null) {
      corrector.tell(Correction.between(before, after));
    } else {
      corrector.tell(amount == null ? Correction.withoutAmount() : Correction.by(amount));
    }
  }

  private void piece(JsonNode value) {
    List<PieceReading> readings = new ArrayList<>();
    JsonFields fields =
        new JsonFields("piece", value, "number", "radiusMm", "standardUncertaintyMm", "readings");
    if (value.has("readings")) {
      value.get("readings").forEach(each -> readings.add(placed(each)));
    } else {
      readings.add(reading(fields));
    }
    int number = fields.whole("number", piece + 1);
    Told.Piece told = new Told.Piece(number, readings);
    if (doubt.isEmpty()) {
      corrector.tell(told);
    }
    piece = number;
  }

  private PieceReading placed(JsonNode value) {
    JsonFields fields =
        new JsonFields(
            "piece.readings", value, "position", "pass", "radiusMm", "standardUncertaintyMm");
    return reading(fields).at(fields.text("position", ""), fields.whole("pass", 1));
  }

  private PieceReading reading(JsonFields fields) {
    Double u = fields.number("standardUncertaintyMm");
    double mm = u == null ? uncertaintyMm : u;
    Double radius = fields.numberOrNull("radiusMm");
    double target = job.aim().targetMm();
    return radius == null
        ? PieceReading.flat(mm / target / target)
        : PieceReading.radius(radius, mm);
  }

  private void target(JsonFields fields) {
    Aim aim = aim(fields);
    corrector.tell(new Told.TargetChange(aim));
    job = new JobStart(job.job(), aim, job.part(), job.section(), job.lot(), job.pieces());
  }

  private void job(JsonFields fields) {
    int pieces = fields.whole("pieces", 0);
    JobStart next =
        new JobStart(
            job.job() + 1,
            aim(fields),
            fields.text("part", ""),
            fields.text("section", job.section()),
            fields.text("lot", ""),
            pieces == 0 ? null : (Integer) pieces);
    corrector.tell(next);
    yields.changed(null);
    job = next;
    piece = 0;
  }

  private static Aim aim(JsonFields fields) {
    double target = fields.needed("targetMm");
    Double tolerance = fields.number("toleranceMm");
    return tolerance == null
        ? new Aim(target, fields.number("lowerMm"), fields.number("upperMm"))
        : Aim.symmetric(target, tolerance);
  }

  /** A line that was refused, for who reads lines. */
  static Map<String, String> refusal(BadInput bad) {
    return Map.of("error", bad.getMessage());
  }

  static String json(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
