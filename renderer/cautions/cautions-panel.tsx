import "./cautions.css";
import { Button } from "@mantine/core";
import { useState } from "react";
import type { CautionsDue } from "../../core/gate/cautions-due.ts";
import { sessionCautions } from "../../core/protocol/session-cautions.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { today } from "../shell/dates.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { type Asking, askingWords } from "./answers.ts";
import { AskingForm } from "./asking-form.tsx";
import { ClosedToday } from "./closed-today.tsx";
import { NotKnownForm } from "./not-known-form.tsx";
import { OpeningForm } from "./opening-form.tsx";
import { ReadingForm } from "./reading-form.tsx";
import { ReadingsTable } from "./readings-table.tsx";
import { openable } from "./written-opening.ts";

const prose = words.screens.cautions;

interface CautionsPanelProps {
  readonly session: SessionResult;
  readonly canWrite: boolean;
  /** Who tests, where that is known. */
  readonly tester?: string;
}

type Doing = Asking | "reading" | "opening" | "not known";

/** Everything about the cautions of a session: what is to be asked, what was read, what is closed, and who opens it. */
export function CautionsPanel({ session, canWrite, tester }: CautionsPanelProps) {
  const [doing, setDoing] = useState<Doing>();
  const { description, gate, folder } = session;
  const { date } = description;
  const askings = sessionCautions(session);
  const isOver = date !== undefined && date < today();
  const isOpen = askings.some(({ state }) => state === "open");
  const close = () => setDoing(undefined);
  const by = tester === undefined ? {} : { tester };
  return (
    <div className="cautions-panel">
      <ul className="caution-moments">
        {askings.map(({ asking, state, isDue }) => (
          <li key={asking} className={isDue ? "caution finding" : undefined}>
            <span>{stateWords(session, asking, state)}</span>
            {canWrite && (
              <Button
                size="xs"
                variant={isDue ? "filled" : "default"}
                aria-label={`${state === "open" ? prose.ask : prose.askAgain} ${askingWords[asking]}`}
                onClick={() => setDoing(asking)}
              >
                {state === "open" ? prose.askNow : prose.askAgain}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <ClosedToday gate={gate} />
      <ReadingsTable session={session} />
      {canWrite && date === undefined && <p className="muted">{prose.belongToADay}</p>}
      {canWrite && date !== undefined && (
        <div className="form-buttons">
          <Button size="xs" variant="default" onClick={() => setDoing("reading")}>
            {prose.addReading}
          </Button>
          {openable(gate.closures).length > 0 && (
            <Button size="xs" variant="default" onClick={() => setDoing("opening")}>
              {prose.openWhatIsClosed}
            </Button>
          )}
          {isOver && isOpen && (
            <Button size="xs" variant="default" onClick={() => setDoing("not known")}>
              {prose.stateNotKnown}
            </Button>
          )}
        </div>
      )}
      {(doing === "session" || doing === "change") && (
        <AskingForm key={doing} session={session} asking={doing} {...by} onClose={close} />
      )}
      {doing === "reading" && date !== undefined && (
        <ReadingForm session={session} date={date} {...by} onClose={close} />
      )}
      {doing === "opening" && date !== undefined && <OpeningForm session={session} date={date} onClose={close} />}
      {doing === "not known" && <NotKnownForm folders={[folder]} onClose={close} />}
    </div>
  );
}

function stateWords({ gate }: SessionResult, asking: Asking, state: CautionsDue["state"]): string {
  const { given, notKnown } = gate.answered;
  const last = given.findLast((each) => each.asked === asking);
  const by = last === undefined ? "" : `: ${dateWords(last.meant.slice(0, 10))}, ${last.by.replace(/\.$/, "")}`;
  if (state === "answered") return prose.answeredWhen(askingWords[asking], by);
  if (state === "not known") return prose.notKnownAsStated(notKnown?.by ?? "");
  return last === undefined
    ? prose.notAskedWhen(askingWords[asking])
    : prose.notFullyAnsweredWhen(askingWords[asking], by);
}
