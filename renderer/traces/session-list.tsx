import type { InvolvedSide } from "../../core/ground/limb.ts";
import { measureEntry } from "../../core/ground/measures/catalogue.ts";
import { countsInMeans, isHeld } from "../../core/result/held-trial.ts";
import { ownMeasure, trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { headlineOf } from "../shell/headline.ts";
import { bearerRole, limbRole } from "../shell/limb-role.ts";
import { Quantity } from "../shell/quantity.tsx";
import { words } from "../words/words.ts";
import { foremostFinding, type ListedTrial, type TrialGroup, trialKey } from "./trial-groups.ts";
import { traceKeysWords } from "./use-trace-keys.ts";

const prose = words.screens.traces;

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
    <nav className="panel session-list" aria-label={prose.trialsOfSession}>
      <h2 className="panel-title">{title}</h2>
      <p className="muted">{countWords(trials)}</p>
      <p className="muted list-keys">{traceKeysWords}</p>
      {groups.map((group) => (
        <section key={group.title} aria-label={group.title}>
          <h3 className="list-heading">
            {group.title}
            {group.test !== undefined && <span className="list-measure">{headlineOf(group.test).words}</span>}
          </h3>
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

interface TrialItemProps {
  readonly listed: ListedTrial;
  readonly involved: InvolvedSide | undefined;
}

function TrialItem({ listed, involved }: TrialItemProps) {
  const { trial, attempt } = listed;
  const finding = foremostFinding(trial.findings);
  const bearer = trialBearer(trial);
  return (
    <>
      <span className="trial-attempt">
        {attempt === 0 ? (trial.practice ? prose.practice : trial.file) : attempt}
        {bearer !== undefined && bearer.side !== "both" && (
          <span className={`limb-${bearerRole(bearer, involved)}`}> {words.limbs.bearer(bearer)}</span>
        )}
      </span>
      <span className="trial-headline">
        <HeadlineValue trial={trial} />
      </span>
      <span className="trial-seen">{trial.seen ? prose.seen : prose.notYet}</span>
      <BesideHeadline trial={trial} involved={involved} />
      {trial.excluded !== undefined && (
        <span className="trial-remark">{prose.excludedBecause(trial.excluded.reason)}</span>
      )}
      {trial.practice === true && <span className="trial-remark">{prose.practiceJump}</span>}
      {trial.held !== undefined && <span className="trial-remark">{prose.heldBecause(trial.held.reason)}</span>}
      {trial.excluded === undefined && trial.held === undefined && finding !== undefined && (
        <span className="trial-remark">{findingInWords(finding, words).message}</span>
      )}
    </>
  );
}

/** The value by which trials of this test are told apart; a dash for one that does not count. */
function HeadlineValue({ trial }: { readonly trial: TrialResult }) {
  if (trial.test === undefined || trial.limb === undefined) return null;
  const { id } = headlineOf(trial.test);
  const value = countsInMeans(trial) ? ownMeasure(trial, id)?.value : undefined;
  return <Quantity value={value} unit={measureEntry(id).unit} withUnit />;
}

/** What belongs beside the headline: the contact of a drop jump, and the leg that led off the box. */
function BesideHeadline({ trial, involved }: { trial: TrialResult; involved: InvolvedSide | undefined }) {
  if (trial.test === undefined) return null;
  const { beside } = headlineOf(trial.test);
  const measure = beside === undefined ? undefined : ownMeasure(trial, beside.id);
  const { leadingLeg } = trial;
  if (measure === undefined && leadingLeg === undefined) return null;
  return (
    <span className="trial-beside">
      {measure !== undefined && (
        <>
          {beside?.words} <Quantity value={measure.value} unit={measure.unit} withUnit />
        </>
      )}
      {measure !== undefined && leadingLeg !== undefined && " · "}
      {leadingLeg !== undefined && (
        <>
          <span className={`limb-${limbRole(leadingLeg, involved)}`}>{leadingLeg}</span> {prose.led}
        </>
      )}
    </span>
  );
}

function countWords(trials: readonly TrialResult[]): string {
  const seen = trials.filter((trial) => trial.seen).length;
  const excluded = trials.filter((trial) => trial.excluded !== undefined).length;
  const words = [`${trials.length} ${trials.length === 1 ? prose.trial : prose.trials}`, prose.seenCount(seen)];
  const held = trials.filter(isHeld).length;
  if (held > 0) words.push(prose.heldCount(held));
  if (excluded > 0) words.push(prose.excludedCount(excluded));
  const practice = trials.filter((trial) => trial.practice === true).length;
  if (practice > 0) words.push(prose.practiceCount(practice));
  return words.join(", ");
}
