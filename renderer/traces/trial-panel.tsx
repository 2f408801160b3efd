import { Button, Checkbox } from "@mantine/core";
import { useState } from "react";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { suggestLeavingOut } from "../../core/session/leave-out.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import type { TimeRange } from "../charts/plot.tsx";
import { bySeverity, FindingsList } from "../shell/findings-list.tsx";
import { TakeAsRecognised } from "../shell/take-as-recognised.tsx";
import { TakeOutButton } from "../shell/take-out-button.tsx";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { DropStatements } from "./drop-statements.tsx";
import { EventSection } from "./event-section.tsx";
import { jumpOnly, panned, wholeTrial, zoomed } from "./time-window.ts";
import { TraceChart } from "./trace-chart.tsx";
import { type ExtraCurve, extraCurves } from "./trace-figure.ts";
import { TrialActions } from "./trial-actions.tsx";
import type { ListedTrial } from "./trial-groups.ts";
import { TraceLegend, trialSubtitle, trialTitle } from "./trial-heading.tsx";
import { useEventDraft } from "./use-event-draft.ts";
import type { SeenMark } from "./use-seen-mark.ts";

const prose = words.screens.traces;

export interface CurveChoice {
  readonly extras: readonly ExtraCurve[];
  readonly filtered: boolean;
}

interface TrialPanelProps {
  readonly folder: string;
  readonly listed: ListedTrial;
  /** The files of the trials listed with this one, itself included. */
  readonly alike: readonly string[];
  readonly trace: TrialTrace | undefined;
  readonly involved: InvolvedSide | undefined;
  readonly choice: CurveChoice;
  readonly onChoice: (choice: CurveChoice) => void;
  readonly onStep: (by: -1 | 1) => void;
  readonly seenMark: SeenMark;
}

/** One trial: what it is, its curves and events, and what was found about it. */
export function TrialPanel(props: TrialPanelProps) {
  const { folder, listed, trace } = props;
  const { trial } = listed;
  return (
    <section className="panel trial-panel" aria-labelledby="trial-title">
      <div className="trial-head">
        <h2 id="trial-title" className="panel-title">
          {trialTitle(listed)}
        </h2>
        <TrialActions folder={folder} trial={trial} onStep={props.onStep} seenMark={props.seenMark} />
        <p className="muted trial-subtitle">{trialSubtitle(trial)}</p>
        <DropStatements folder={folder} trial={trial} involved={props.involved} alike={props.alike} />
      </div>
      {trial.excluded !== undefined && <p className="caution finding">{prose.excluded(trial.excluded.reason)}</p>}
      {trial.held !== undefined && <p className="caution finding">{prose.heldUntilKept(trial.held.reason)}</p>}
      {trial.kept && <p className="muted">{prose.keptAlthough}</p>}
      {trial.practice === true && <p>{prose.aPracticeJump}</p>}
      {trial.status === "refused" && <p>{prose.notAnalysedWhy}</p>}
      {trace !== undefined && <TrialCurves {...props} trace={trace} />}
      {trace === undefined && trial.status !== "refused" && <div className="trace-chart" aria-busy="true" />}
      <FindingsList findings={bySeverity(trial.findings)} place={{ folder, file: trial.file, trial: trial.trial }} />
      <TakeAsRecognised folder={folder} file={trial.file} said={trial.findings} />
      {suggestLeavingOut(trial.findings) && (
        <div className="form-buttons">
          <TakeOutButton folder={folder} files={[trial.file]} />
        </div>
      )}
    </section>
  );
}

function TrialCurves(props: TrialPanelProps & { readonly trace: TrialTrace }) {
  const { folder, listed, trace, involved, choice, onChoice } = props;
  const [zoom, setZoom] = useState<TimeRange>();
  const draft = useEventDraft(folder, trace);
  const range = zoom ?? jumpOnly(trace);
  const whole = wholeTrial(trace);
  const toggle = (name: ExtraCurve) =>
    onChoice({
      ...choice,
      extras: extraCurves.filter((each) => (each === name) !== choice.extras.includes(each)),
    });
  return (
    <>
      <div className="trace-tools">
        <TraceLegend trace={trace} involved={involved} />
        <fieldset className="tool-group">
          <legend className="visually-hidden">{prose.curvesDrawn}</legend>
          {extraCurves.map((name) => (
            <Checkbox
              key={name}
              size="xs"
              label={sentenceCase(name)}
              checked={choice.extras.includes(name)}
              disabled={trace[name].length === 0}
              onChange={() => toggle(name)}
            />
          ))}
          <Checkbox
            size="xs"
            label={prose.filtered}
            checked={choice.filtered}
            onChange={() => onChoice({ ...choice, filtered: !choice.filtered })}
          />
        </fieldset>
        <fieldset className="tool-group">
          <legend className="visually-hidden">{prose.stretchOfTime}</legend>
          <Button variant="default" size="compact-xs" onClick={() => setZoom(undefined)}>
            {prose.jump}
          </Button>
          <Button variant="default" size="compact-xs" onClick={() => setZoom(whole)}>
            {prose.whole}
          </Button>
          <StepButton label={prose.earlier} text="←" onClick={() => setZoom(panned(range, -0.25, whole))} />
          <StepButton label={prose.later} text="→" onClick={() => setZoom(panned(range, 0.25, whole))} />
          <StepButton label={prose.closer} text="+" onClick={() => setZoom(zoomed(range, 0.5, whole))} />
          <StepButton label={prose.wider} text="−" onClick={() => setZoom(zoomed(range, 2, whole))} />
        </fieldset>
      </div>
      <TraceChart
        trace={trace}
        title={trialTitle(listed)}
        involved={involved}
        range={range}
        onRange={setZoom}
        extras={choice.extras}
        filtered={choice.filtered}
        draft={draft}
        onDrawn={props.seenMark.onDrawn}
      />
      <EventSection folder={folder} trial={trace.trial} involved={involved} draft={draft} />
    </>
  );
}

function StepButton({ label, text, onClick }: { label: string; text: string; onClick: () => void }) {
  return (
    <Button variant="default" size="compact-xs" aria-label={label} title={label} onClick={onClick}>
      {text}
    </Button>
  );
}
