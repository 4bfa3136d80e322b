package org.chordlog.verdict;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.correction.MachineScale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Incident;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Section;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.radius.Distribution;
import org.chordlog.stats.capability.FigureKind;
import org.chordlog.stats.control.RunTest;
import org.chordlog.study.StudyVerdict;

/** All words by the constant they are of, for who shows constants to people. */
public final class Vocabulary {
  private Vocabulary() {}

  /** Group to constant to words; every constant of each enum is there. */
  public static Map<String, Map<String, String>> all() {
    Map<String, Map<String, String>> all = new LinkedHashMap<>();
    all.put("decisions", of(Decision.values(), Words::of));
    all.put("decisionSigns", of(Decision.values(), Words::sign));
    all.put("faces", of(Face.values(), Words::of));
    all.put("feet", of(FootKind.values(), Words::of));
    all.put("marks", of(Mark.values(), Words::of));
    all.put("events", of(JobEvent.Kind.values(), Words::of));
    all.put("work", of(LogbookEntry.Kind.values(), Words::of));
    all.put("incidents", of(Incident.Kind.values(), Words::of));
    all.put("phases", of(Capture.Phase.values(), Words::of));
    all.put("captures", of(CaptureMode.values(), Words::of));
    all.put("clocks", of(ClockState.values(), Words::of));
    all.put("sections", of(Section.Kind.values(), SectionWords::of));
    all.put("subgroups", of(SubgroupRule.Kind.values(), Words::of));
    all.put("decideBy", of(DecideBy.values(), Words::of));
    all.put("refusals", of(CaptureOutcome.Reason.values(), RefusalWords::of));
    all.put("refusalAdvice", of(CaptureOutcome.Reason.values(), RefusalWords::advice));
    all.put("rules", of(RunTest.values(), SignalWords::rule));
    all.put("issues", of(StationIssue.values(), issue -> issue.statement().word()));
    all.put(
        "issueAdvice", of(StationIssue.values(), issue -> issue.statement().advice().toString()));
    all.put("screens", of(ScreenState.values(), each -> each.statement().word()));
    all.put("screenAdvice", of(ScreenState.values(), each -> each.statement().advice().toString()));
    all.put("screenTones", of(ScreenState.values(), each -> each.statement().tone().name()));
    all.put("distributions", of(Distribution.values(), Distribution::word));
    all.put("tighter", of(MachineScale.Tighter.values(), Words::of));
    all.put("figures", of(FigureKind.values(), FigureKind::title));
    all.put("studyKinds", of(GaugeStudy.Kind.values(), StudyWords::of));
    all.put("studyPurposes", of(GaugeStudy.Kind.values(), StudyWords::purpose));
    all.put("studySpots", of(GaugeStudy.Kind.values(), StudyWords::spot));
    all.put("studyStates", of(GaugeStudy.State.values(), StudyWords::of));
    all.put("studyStateTones", of(GaugeStudy.State.values(), each -> tone(StudyWords.tone(each))));
    all.put("studyVerdicts", of(StudyVerdict.values(), StudyWords::of));
    all.put("studyVerdictTones", of(StudyVerdict.values(), each -> tone(StudyWords.tone(each))));
    alerts(all);
    all.put("settings", SettingWords.labels());
    all.put("settingUnits", SettingWords.units());
    all.put("settingHints", SettingWords.hints());
    all.put("settingChoices", SettingWords.choices());
    return all;
  }

  private static void alerts(Map<String, Map<String, String>> all) {
    all.put("alerts", of(AlertKind.values(), AlertWords::of));
    all.put("alertCauses", of(AlertKind.values(), AlertWords::cause));
    all.put("alertConsequences", of(AlertKind.values(), AlertWords::consequence));
    all.put("alertAdvice", of(AlertKind.values(), AlertWords::whatToDo));
    all.put("alertStates", of(AlertState.values(), AlertWords::of));
    all.put("alertEvents", of(AlertEvent.What.values(), AlertWords::of));
    all.put("alertPriorities", of(AlertPriority.values(), AlertWords::of));
    all.put("alertAudiences", of(AlertAudience.values(), AlertWords::of));
  }

  /** As pages look it up. */
  private static String tone(Tone tone) {
    return tone.name().toLowerCase(Locale.ROOT);
  }

  private static <E extends Enum<E>> Map<String, String> of(E[] values, Function<E, String> words) {
    Map<String, String> all = new LinkedHashMap<>();
    Arrays.stream(values).forEach(each -> all.put(each.name(), words.apply(each)));
    return all;
  }
}
