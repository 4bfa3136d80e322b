package org.chordlog.cli.study;

import java.util.LinkedHashMap;
import java.util.Map;
import org.chordlog.cli.common.JsonText;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyResult;
import org.jspecify.annotations.Nullable;

/** A study as JSON. */
final class StudyJson {
  private StudyJson() {}

  static String of(StudyResult result, @Nullable BudgetComparison budget) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("kind", StudyKinds.typed(result.kind()));
    json.put("design", result.design());
    json.put("verdict", result.conclusion().verdict());
    json.put("says", result.conclusion().says().toString());
    json.put("figures", result.figures());
    json.put("alternatives", result.alternatives());
    json.put("analysisOfVariance", result.anova());
    json.put("tests", result.tests());
    if (budget != null) {
      json.put("budget", budget);
    }
    json.put("cautions", result.cautions());
    json.put("partsMove", result.partsMove());
    return JsonText.of(json);
  }
}
