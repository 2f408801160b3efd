import { intervalCaution, standingCautions } from "../../core/criteria/cautions.ts";
import type { CriterionResult } from "../../core/criteria/criterion.ts";
import { populationNotes } from "../../core/criteria/population-notes.ts";
import { sentences } from "../../core/ground/plain-words.ts";
import type { Status } from "../../core/ground/status.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { ClosedToday } from "../cautions/closed-today.tsx";
import { StatusWord } from "../shell/status-word.tsx";
import { firstSentence } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { KneePanel } from "./knee-panel.tsx";

const prose = words.screens.sides;

/** The session held against its criteria: each with its status, what qualifies it, and what more trials could do. */
export function CriteriaPanel({ session }: { readonly session: SessionResult }) {
  const { criteriaSet, criteria, gate, description } = session;
  const mismatch = sentences(...populationNotes(criteriaSet, description.athlete, description.date));
  return (
    <section className="panel panel-padded criteria-panel" aria-labelledby="criteria-title">
      <h2 id="criteria-title" className="panel-title">
        {prose.heldAgainst(criteriaSet.name, criteriaSet.version)}
      </h2>
      <p className="muted">{criteriaSet.population}.</p>
      {mismatch !== "" && <p className="caution finding">{mismatch}</p>}
      {gate.open && gate.closures.length === 0 ? <p className="muted">{gate.reason}</p> : <ClosedToday gate={gate} />}
      {criteria.length === 0 && <p>{prose.noStatusYet}</p>}
      <ul className="criteria-list">
        {criteria.map((result) => (
          <CriterionEntry key={result.criterion.id} result={result} saysWithheld={gate.open} />
        ))}
      </ul>
      <KneePanel rows={session.knee} />
    </section>
  );
}

/** What is said beside the criteria, whatever was measured. */
export function StandingCautions() {
  return (
    <section className="standing-cautions muted" aria-labelledby="cautions-title">
      <h2 id="cautions-title" className="panel-title">
        {prose.whatCriteriaCannotSay}
      </h2>
      <ul>
        {[...standingCautions, intervalCaution].map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

/** The statuses that need their reason beside them. */
const saysWhy: ReadonlySet<Status> = new Set<Status>([
  "too-close-to-call",
  "not-measured",
  "not-applicable",
  "no-reference",
  "out-of-date",
]);

interface CriterionEntryProps {
  readonly result: CriterionResult;
  /** True where tests are closed singly; what closes all of them stands once above all of them. */
  readonly saysWithheld: boolean;
}

function CriterionEntry({ result, saysWithheld }: CriterionEntryProps) {
  const { criterion, status, reason, caution, moreTrials } = result;
  return (
    <li>
      <p>{criterion.label}</p>
      <StatusWord status={status} words={words.statuses.words(result)} />
      {saysWhy.has(status) && <p className="muted">{firstSentence(reason)}</p>}
      {status === "withheld-today" && saysWithheld && <p className="muted">{reason}</p>}
      {moreTrials !== "" && <p className="muted">{moreTrials}</p>}
      {caution !== "" && <p className="caution finding">{caution}</p>}
    </li>
  );
}
