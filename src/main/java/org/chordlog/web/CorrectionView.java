package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.correction.Advice;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.GainEstimate;
import org.chordlog.correction.LevelEstimate;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.Notice;
import org.chordlog.correction.Readiness;
import org.chordlog.correction.StartSetting;
import org.jspecify.annotations.Nullable;

/** Whether and how to correct the rollers of a machine, and what that rests on. */
record CorrectionView(
    String machine,
    Advice.Action action,
    @JsonPropertyDescription("what to do in a few words; empty where nothing is to be done")
        String act,
    @JsonPropertyDescription("one or two plain sentences") String text,
    @JsonPropertyDescription("to be shown beside it") String caution,
    @JsonPropertyDescription("on the machine's scale, in its unit; null unless it is known")
        @Nullable Double amount,
    @Nullable Double amountStandardUncertainty,
    @JsonPropertyDescription("radius less target, mm") @Nullable Double levelMm,
    @Nullable Double levelStandardUncertaintyMm,
    @JsonPropertyDescription("CORRECT: what it is expected to do") @Nullable ProspectView prospect,
    ScaleView scale,
    @JsonPropertyDescription("number on the scale as far as recorded; null where it is not known")
        @Nullable Double setting,
    @JsonPropertyDescription("number on the scale to begin with; only before the first piece")
        @Nullable Double startSetting,
    @JsonPropertyDescription("to be asked of the operator") List<NoticeView> notices,
    @JsonPropertyDescription("change of radius for one unit of the scale, mm")
        @Nullable Double gainMm,
    @Nullable Double gainStandardUncertaintyMm,
    @JsonPropertyDescription("scatter of pieces about their level, mm") double scatterMm,
    @JsonPropertyDescription("how far the set-up is") @Nullable String readiness) {
  /** What a correction is expected to do. */
  record ProspectView(
      double radiusMm, double outBefore, double outAfter, double chance, @Nullable Double setTo) {}

  /** The scale that amounts are on. */
  record ScaleView(String name, String unit, double step, MachineScale.Tighter tighter) {
    static ScaleView of(MachineScale scale) {
      return new ScaleView(scale.name(), scale.unit(), scale.step(), scale.tighter());
    }
  }

  /** Something to be told or asked beside the advice. */
  record NoticeView(Notice.Kind kind, String text) {}

  static CorrectionView of(String machine, CorrectionSnapshot now) {
    Advice advice = now.advice();
    LevelEstimate level = advice.level();
    GainEstimate gain = now.learned().gain();
    StartSetting start = now.start();
    Readiness readiness = now.learned().readiness();
    return new CorrectionView(
        machine,
        advice.action(),
        advice.act(),
        advice.text(),
        Advice.caution(),
        advice.amount(),
        advice.amountStandardUncertainty(),
        level == null ? null : level.levelMm(),
        level == null ? null : level.standardUncertaintyMm(),
        advice instanceof Advice.Correct correct ? prospect(correct) : null,
        ScaleView.of(now.learned().scale()),
        now.setting(),
        start == null ? null : start.setting(),
        now.notices().stream().map(each -> new NoticeView(each.kind(), each.text())).toList(),
        gain == null ? null : gain.radiusMmPerUnit(),
        gain == null ? null : gain.standardUncertaintyMmPerUnit(),
        now.learned().scatterMm(),
        readiness == null ? null : readiness.text());
  }

  private static ProspectView prospect(Advice.Correct correct) {
    Advice.Prospect prospect = correct.prospect();
    return new ProspectView(
        prospect.radiusMm(),
        prospect.outBefore(),
        prospect.outAfter(),
        prospect.chance(),
        correct.move().to());
  }
}
