import { useState } from "react";
import type { SessionOffers } from "../../core/assignment/session-offers.ts";
import { askedAnswers } from "../../core/protocol/asked-answers.ts";
import { sessionProgress } from "../../core/protocol/session-progress.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { AddToProtocol } from "../shell/add-to-protocol.tsx";
import { AskedAnswers } from "../shell/asked-answers.tsx";
import { athleteWords, dateWords, injuryWords } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { missingWords, SessionForm } from "./session-form.tsx";

const prose = words.screens.sessionStatements;

interface SessionStatementsProps {
  readonly session: SessionResult;
  /** False while the board of the watch shows the same. */
  readonly showsProtocol: boolean;
  readonly offers: SessionOffers;
}

/** Asks whose session it is; where that was stated, a line that opens the same form. */
export function SessionStatements({ session, showsProtocol, offers }: SessionStatementsProps) {
  const [opened, setOpened] = useState(false);
  const open = opened || missingWords(session) !== "";
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="about-title">
      <div className="session-summary">
        <h2 id="about-title" className="panel-title">
          {prose.aboutThisSession}
        </h2>
        {!open && (
          <>
            <p className="muted">{summaryWords(session, !showsProtocol)}</p>
            <button type="button" className="text-button" onClick={() => setOpened(true)}>
              {prose.changeWhatWasStated}
            </button>
          </>
        )}
      </div>
      {showsProtocol && <ProtocolProgress session={session} />}
      {showsProtocol && <AskedAnswers folder={session.folder} asked={askedAnswers(session)} />}
      {open && <SessionForm session={session} offers={offers} onKept={() => setOpened(false)} />}
    </section>
  );
}

/** How far the session has come in its protocol, and what is still missing; nothing without one. */
function ProtocolProgress({ session }: { readonly session: SessionResult }) {
  const progress = sessionProgress(session);
  const { protocol } = session.description;
  if (progress === undefined) return null;
  const { protocol: name, lines, done, tooEarly, landings } = progress;
  return (
    <div className="protocol-progress">
      <h3>{name}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {landings !== "" && <p className="muted">{landings}</p>}
      {done !== "" && <p className="muted">{done}</p>}
      {tooEarly.map((line) => (
        <p key={line} className="finding caution">
          {line}
        </p>
      ))}
      {protocol !== undefined && <AddToProtocol folder={session.folder} protocol={protocol} />}
    </div>
  );
}

/** @param inPublic beside a board that other people read, why it was stopped is not said */
function summaryWords({ description }: SessionResult, inPublic: boolean): string {
  const { date, milestone, massKg, stopped } = description;
  return [
    athleteWords(description),
    date === undefined ? "" : dateWords(date),
    milestone ?? "",
    injuryWords(description),
    massKg === undefined ? "" : prose.kilograms(massKg),
    stopped === undefined ? "" : inPublic ? prose.stoppedInPublic : prose.stopped(stopped.reason.replace(/\.$/, "")),
  ]
    .filter((part) => part !== "")
    .join(" · ");
}
