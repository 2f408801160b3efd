import type { InvolvedSide } from "../../core/limb.ts";
import type { TrialResult } from "../../core/result.ts";
import { limbRole } from "../shell/limb-role.ts";
import { Quantity } from "../shell/quantity.tsx";
import { foremostFinding, type ListedTrial, type TrialGroup, trialKey } from "./trial-groups.ts";

interface SessionListProps {
  readonly title: string;
  readonly groups: readonly TrialGroup[];
  readonly involved: InvolvedSide | undefined;
  readonly selected: string;
  readonly onSelect: (key: string) => void;
}

/** The session's trials in words: attempt, limb, headline value, seen or not, what asks for eyes. */
export function SessionList({ title, groups, involved, selected, onSelect }: SessionListProps) {
  const trials = groups.flatMap((group) => group.trials.map(({ trial }) => trial));
  return (
    <nav className="panel session-list" aria-label="Trials of the session">
      <h2 className="panel-title">{title}</h2>
      <p className="muted">{countWords(trials)}</p>
      <p className="muted list-keys">Alt+↑ or ↓: another trial. Ctrl+Enter: seen, next.</p>
      {groups.map((group) => (
        <section key={group.title} aria-label={group.title}>
          <h3 className="list-heading">{group.title}</h3>
          <ul>
            {group.trials.map((listed) => {
              const key = trialKey(listed.trial);
              return (
                <li key={key}>
                  <button
                    type="button"
                    className="trial-item"
                    data-trial={key}
                    aria-current={key === selected ? "true" : undefined}
                    onClick={() => onSelect(key)}
                  >
                    <TrialItem listed={listed} involved={involved} />
                  </button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </nav>
  );
}

function TrialItem({ listed, involved }: { listed: ListedTrial; involved: InvolvedSide | undefined }) {
  const { trial, attempt } = listed;
  const height = trial.measures.find((measure) => measure.id === "jumpHeightImpulse");
  const finding = foremostFinding(trial.findings);
  return (
    <>
      <span className="trial-attempt">
        {attempt === 0 ? trial.file : attempt}
        {(trial.limb === "left" || trial.limb === "right") && (
          <span className={`limb-${limbRole(trial.limb, involved)}`}> {trial.limb}</span>
        )}
      </span>
      <span className="trial-headline">
        {attempt !== 0 && (
          <Quantity value={trial.excluded === undefined ? height?.value : undefined} unit="m" withUnit />
        )}
      </span>
      <span className="trial-seen">{trial.seen ? "seen" : "not yet"}</span>
      {trial.excluded !== undefined && <span className="trial-remark">excluded: {trial.excluded.reason}</span>}
      {trial.excluded === undefined && finding !== undefined && <span className="trial-remark">{finding.message}</span>}
    </>
  );
}

function countWords(trials: readonly TrialResult[]): string {
  const seen = trials.filter((trial) => trial.seen).length;
  const excluded = trials.filter((trial) => trial.excluded !== undefined).length;
  const words = [`${trials.length} ${trials.length === 1 ? "trial" : "trials"}`, `${seen} seen`];
  if (excluded > 0) words.push(`${excluded} excluded`);
  return words.join(", ");
}
