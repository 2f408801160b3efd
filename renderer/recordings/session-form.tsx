import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionOffers } from "../../core/assignment/session-offers.ts";
import { listInWords } from "../../core/ground/plain-words.ts";
import { shippedProtocols } from "../../core/protocol/shipped-protocols.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { stopKinds } from "../../core/stated/gate-words.ts";
import type { Protocol } from "../../core/stated/protocol-schema.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { stopKindLabels } from "../cautions/stop-kinds.ts";
import { dateWords, involvedWords, sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import {
  involvedSides,
  plateNames,
  sessionChangeFrom,
  type WrittenSession,
  writtenSession,
} from "./session-answers.ts";

const prose = words.screens.sessionStatements;

/** What a stop can be about; only the knee and the athlete close the gate. */
const stopChoices = [
  { value: "", label: prose.countsAsTheKnee },
  ...stopKinds.map((kind) => ({ value: kind, label: stopKindLabels[kind] })),
];

interface SessionFormProps {
  readonly session: SessionResult;
  /** What the files say of the athlete and the day; it stands in the form until it is kept or overwritten. */
  readonly offers: SessionOffers;
  /** After the statements were kept. */
  readonly onKept: () => void;
}

/** What was written in the form, and what was said of the session when the writing began. */
interface Draft {
  readonly from: SessionDescription;
  readonly written: WrittenSession;
}

/** Asks what session.json does not say; all of it can be changed. */
export function SessionForm({ session, offers, onKept }: SessionFormProps) {
  const { apply, workspace } = useWorkspace();
  const { description, folder } = session;
  const [draft, setDraft] = useState<Draft>();
  // A form in which nothing was written yet shows what is said now, also after undo.
  const { from, written } = draft ?? { from: description, written: withOffers(writtenSession(description), offers) };
  const [problem, setProblem] = useState("");
  const field = (name: keyof WrittenSession) => ({
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      setDraft({ from, written: { ...written, [name]: event.currentTarget.value } }),
  });
  const missing = missingWords(session);
  const plates = plateNames(session);
  const offered = offerWords(offers);
  return (
    <form
      className="session-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const outcome = sessionChangeFrom(written, from, plates);
        if ("problem" in outcome) return setProblem(outcome.problem);
        setProblem("");
        void apply("session.change", { folder, change: outcome.change, before: from }).then((isKept) => {
          if (!isKept) return;
          setDraft(undefined);
          onKept();
        });
      }}
    >
      {missing !== "" && <p className="caution finding">{missing}</p>}
      {offered !== "" && <p className="muted">{offered}</p>}
      <div className="answer-fields">
        <TextInput label={prose.athleteSCode} {...field("code")} />
        <TextInput label={prose.athleteSNameIfWanted} {...field("name")} />
        <NativeSelect
          label={prose.involvedSide}
          {...field("involved")}
          data={[
            { value: "", label: prose.notStated },
            ...involvedSides.map((side) => ({ value: side, label: sentenceCase(involvedWords(side)) })),
          ]}
        />
        <TextInput className="answer-wide" label={prose.injuryInWords} {...field("injury")} />
        {workspace?.keptAs === undefined && (
          <>
            <NativeSelect
              label={prose.operationOfKnee}
              {...field("operated")}
              data={[
                { value: "", label: prose.noneStated },
                { value: "on", label: prose.operatedOnOnDate },
                { value: "unknown", label: prose.operatedOnDateNotKnown },
              ]}
            />
            {written.operated === "on" && (
              <TextInput label={prose.dateOfOperation} type="date" {...field("operatedOn")} />
            )}
            {written.operated !== "" && (
              <NativeSelect
                label={prose.meniscusOrCartilageRepaired}
                {...field("repaired")}
                data={[
                  { value: "", label: prose.repairNotStated },
                  { value: "yes", label: prose.yes },
                  { value: "no", label: prose.no },
                  { value: "not known", label: prose.repairNotKnown },
                ]}
              />
            )}
          </>
        )}
        <TextInput label={prose.date} type="date" {...field("date")} />
        <TextInput label={prose.milestone} {...field("milestone")} />
        <NativeSelect
          className="answer-wide"
          label={prose.protocol}
          {...field("protocol")}
          data={[{ value: "", label: prose.noProtocol }, ...protocolChoices(description.protocol)]}
        />
        <TextInput label={prose.bodyMassKg} inputMode="decimal" {...field("mass")} />
        {plates.length === 2 && (
          <NativeSelect
            className="answer-wide"
            label={prose.feetOnPlates}
            {...field("leftFoot")}
            data={[
              { value: "", label: prose.asColumnsAreNamed },
              ...plates.map((name) => ({
                value: name,
                label: prose.leftOnRightOn(
                  name,
                  plates.find((other) => other !== name),
                ),
              })),
            ]}
          />
        )}
        <TextInput
          className="answer-wide"
          label={prose.stoppedBecause}
          placeholder={prose.notStopped}
          {...field("stopped")}
        />
        {written.stopped.trim() !== "" && (
          <NativeSelect label={prose.theReason} {...field("stopKind")} data={stopChoices} />
        )}
      </div>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      <Button type="submit" variant={missing === "" ? "default" : "filled"}>
        {prose.keepTheseStatements}
      </Button>
    </form>
  );
}

function withOffers(written: WrittenSession, { athlete, date }: SessionOffers): WrittenSession {
  return { ...written, code: athlete?.value ?? written.code, date: date?.value ?? written.date };
}

/** "Offered: athlete GH-07 (header, line 1), 14 Oct 2026 (folder name). Keep or overwrite it." */
function offerWords({ athlete, date }: SessionOffers): string {
  const parts = [
    ...(athlete === undefined ? [] : [prose.athleteFrom(athlete.value, athlete.from)]),
    ...(date === undefined ? [] : [`${dateWords(date.value)} (${date.from})`]),
  ];
  return parts.length === 0 ? "" : prose.offeredByFiles(parts.join(", "));
}

/** The protocols that ship with the program, and the session's own where it is another or was changed. */
function protocolChoices(own: Protocol | undefined) {
  const known = shippedProtocols.filter(({ id }) => id !== own?.id);
  const all = own === undefined ? known : [own, ...known];
  return all.map(({ id, name, stage }) => ({ value: id, label: `${stage}: ${name}` }));
}

/** What is needed to compare sides and to name the sheet, and nobody stated. */
export function missingWords({ description }: SessionResult): string {
  const missing = [
    ...(description.athlete === undefined ? [prose.theAthlete] : []),
    ...(description.involved === undefined ? [prose.theInvolvedSide] : []),
    ...(description.date === undefined ? [prose.theDate] : []),
  ];
  if (missing.length === 0) return "";
  const consequence = description.involved === undefined ? prose.sidesNotCompared : "";
  return prose.notStatedYet(listInWords(missing), consequence);
}
