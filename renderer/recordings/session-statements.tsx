import { useState } from "react";
import type { SessionResult } from "../../core/result.ts";
import { athleteWords, dateWords, injuryWords } from "../shell/words.ts";
import { missingWords, SessionForm } from "./session-form.tsx";

/** Asks whose session it is; where that was stated, a line that opens the same form. */
export function SessionStatements({ session }: { readonly session: SessionResult }) {
  const [opened, setOpened] = useState(false);
  const open = opened || missingWords(session) !== "";
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="about-title">
      <div className="session-summary">
        <h2 id="about-title" className="panel-title">
          About this session
        </h2>
        {!open && (
          <>
            <p className="muted">{summaryWords(session)}</p>
            <button type="button" className="text-button" onClick={() => setOpened(true)}>
              Change what was stated
            </button>
          </>
        )}
      </div>
      {open && <SessionForm session={session} />}
    </section>
  );
}

function summaryWords({ description }: SessionResult): string {
  const { date, milestone, massKg, pain, effusion, stopped } = description;
  return [
    athleteWords(description),
    date === undefined ? "" : dateWords(date),
    milestone ?? "",
    injuryWords(description),
    massKg === undefined ? "" : `${massKg} kg`,
    pain === undefined ? "pain not recorded" : `pain ${pain} of 10`,
    effusion === undefined ? "effusion not recorded" : `effusion ${effusion}`,
    stopped === undefined ? "" : `stopped: ${stopped.reason.replace(/\.$/, "")}`,
  ]
    .filter((part) => part !== "")
    .join(" · ");
}
