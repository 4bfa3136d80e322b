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
import org.chordlog.correction.RestOfPiece;
import org.chordlog.correction.StartSetting;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Whether and how to correct the rollers of a machine, and what that rests on. */
record CorrectionView(
    String machine,
    Advice.Action action,
    @JsonPropertyDescription("what to do in a few words; empty where nothing is to be done")
        Sentence act,
    @JsonPropertyDescription("one or two plain sentences") Sentence text,
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
    @JsonPropertyDescription("where to begin on the scale; only before the first piece")
        @Nullable StartView start,
    @JsonPropertyDescription("to be asked of the operator") List<NoticeView> notices,
    @JsonPropertyDescription("change of radius for one unit of the scale, mm")
        @Nullable Double gainMm,
    @Nullable Double gainStandardUncertaintyMm,
    @JsonPropertyDescription("scatter of pieces about their level, mm") double scatterMm,
    @JsonPropertyDescription("how far the set-up is") @Nullable String readiness,
    @JsonPropertyDescription("after a reading near the start of a piece: what its rest will be")
        @Nullable RestView rest,
    @JsonPropertyDescription("what the gauge may be off by for all pieces alike")
        @Nullable Sentence common) {
  /** What a correction is expected to do. */
  record ProspectView(
      double radiusMm, double outBefore, double outAfter, double chance, @Nullable Double setTo) {}

  /** The scale that amounts are on. */
  record ScaleView(
      @JsonPropertyDescription("whether anybody has described it") boolean described,
      String name,
      String unit,
      @JsonPropertyDescription("0 if not known") double step,
      MachineScale.Tighter tighter,
      @JsonPropertyDescription("0 if not known") double lostMotion) {
    static ScaleView of(MachineScale scale) {
      return new ScaleView(
          !scale.equals(MachineScale.unknown()),
          scale.name(),
          scale.unit(),
          scale.step(),
          scale.tighter(),
          scale.lostMotion());
    }
  }

  /** Something to be told or asked beside the advice. */
  record NoticeView(
      Notice.Kind kind,
      Sentence text,
      @JsonPropertyDescription("on the scale, of the move that is asked about")
          @Nullable Double amount) {
    static NoticeView of(Notice notice) {
      return new NoticeView(notice.kind(), notice.text(), notice.amount());
    }
  }

  /** Where to begin on the scale, and what that rests on. */
  record StartView(double setting, String text) {
    static StartView of(StartSetting start) {
      return new StartView(start.setting(), start.basis().words());
    }
  }

  /** The rest of a piece, and what to change for it. */
  record RestView(
      Sentence text,
      double radiusMm,
      double standardUncertaintyMm,
      @JsonPropertyDescription("on the scale; null: go on as it is") @Nullable Double amount) {
    static RestView of(RestOfPiece rest) {
      return new RestView(
          rest.text(), rest.radiusMm(), rest.standardUncertaintyMm(), rest.amount());
    }
  }

  static CorrectionView of(String machine, CorrectionSnapshot now, @Nullable Sentence common) {
    Advice advice = now.advice();
    LevelEstimate level = advice.level();
    GainEstimate gain = now.learned().gain();
    StartSetting start = now.start();
    RestOfPiece rest = now.rest();
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
        start == null ? null : StartView.of(start),
        now.notices().stream().map(NoticeView::of).toList(),
        gain == null ? null : gain.radiusMmPerUnit(),
        gain == null ? null : gain.standardUncertaintyMmPerUnit(),
        now.learned().scatterMm(),
        readiness == null ? null : readiness.text(),
        rest == null ? null : RestView.of(rest),
        common);
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
