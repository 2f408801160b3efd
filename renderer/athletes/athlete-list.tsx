import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import type { AthleteLine } from "../../electron/register/register-views.ts";
import { sinceWords, today } from "../shell/dates.ts";
import { dateWords, involvedWords, sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { type ChosenFilter, isNarrowed, openFilter, operationSpans, sessionSpans } from "./list-filter.ts";
import { useAthletes } from "./use-athletes.ts";

const prose = words.screens.athletesList;

interface AthleteListProps {
  readonly workspace: Workspace;
  /** Identifier of the athlete whose page is shown; "" for none. */
  readonly shown: string;
  readonly onChoose: (athlete: string) => void;
  readonly onAdd: () => void;
}

/** Most lines drawn at a time: whoever has more athletes searches. */
const mostLines = 100;

/** The athletes, narrowed as one types. */
export function AthleteList({ workspace, shown, onChoose, onAdd }: AthleteListProps) {
  const [chosen, setChosen] = useState<ChosenFilter>(openFilter);
  const list = useAthletes(chosen, workspace);
  const set = (name: keyof ChosenFilter) => ({
    value: chosen[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement | HTMLSelectElement>) =>
      setChosen({ ...chosen, [name]: event.currentTarget.value }),
  });
  const athletes = list?.athletes ?? [];
  const isOpen = chosen.text.trim() === "" && !isNarrowed(chosen);
  const recent = isOpen ? recentOf(athletes, list?.recent ?? []) : [];
  return (
    <section className="panel athlete-list" aria-labelledby="list-title">
      <div className="athlete-list-head">
        <div className="session-summary">
          <h2 id="list-title" className="panel-title">
            {list === undefined ? prose.athletes : countWords(athletes.length, isOpen)}
          </h2>
          <Button
            size="xs"
            variant="default"
            disabled={workspace.register?.readOnlyBecause !== undefined}
            onClick={onAdd}
          >
            {prose.addAthlete}
          </Button>
        </div>
        <TextInput label={prose.search} type="search" {...set("text")} />
        <details open={isNarrowed(chosen)} className="athlete-narrow">
          <summary>{prose.narrowList}</summary>
          <div className="athlete-filters">
            <NativeSelect
              label={prose.involvedSide}
              {...set("involved")}
              data={[
                { value: "", label: prose.any },
                { value: "left", label: prose.left },
                { value: "right", label: prose.right },
                { value: "both", label: prose.bothKnees },
                { value: "none", label: prose.nobodyInjured },
              ]}
            />
            <NativeSelect
              label={prose.operatedWhen}
              {...set("operated")}
              data={[{ value: "", label: prose.anyTimeOrNot }, ...optionsOf(operationSpans)]}
            />
            <NativeSelect
              label={prose.lastSession}
              {...set("lastSession")}
              data={[{ value: "", label: prose.anyTimeOrNone }, ...optionsOf(sessionSpans)]}
            />
            <TextInput label={prose.lastMilestone} {...set("milestone")} />
          </div>
        </details>
      </div>
      {recent.length > 0 && (
        <p className="athlete-recent">
          <span className="muted">{prose.recentlyUsed}</span>{" "}
          {recent.map((line) => (
            <button key={line.id} type="button" className="text-button" onClick={() => onChoose(line.id)}>
              {line.code}
            </button>
          ))}
        </p>
      )}
      <ul aria-label={prose.athletesFound} className="athlete-lines">
        {athletes.slice(0, mostLines).map((line) => (
          <li key={line.id}>
            <button
              type="button"
              className="athlete-line"
              aria-current={line.id === shown ? "true" : undefined}
              onClick={() => onChoose(line.id)}
            >
              <LineWords line={line} />
            </button>
          </li>
        ))}
      </ul>
      {athletes.length > mostLines && (
        <p className="muted athlete-more">{prose.andMore(athletes.length - mostLines)}</p>
      )}
    </section>
  );
}

function LineWords({ line }: { readonly line: AthleteLine }) {
  const { code, name, involved, operated, lastSession } = line;
  const last = [lastSession?.date && dateWords(lastSession.date), lastSession?.milestone].filter(Boolean).join(", ");
  return (
    <>
      <span className="athlete-line-name">
        {name ?? code}
        {name !== undefined && <span className="muted"> {code}</span>}
      </span>
      <span className="muted">
        {involved === "none" ? prose.nobodyIsInjured : sentenceCase(involvedWords(involved))}
        {operated !== undefined && prose.operated(sinceWords(operated, today()))}
      </span>
      <span className="muted">
        {lastSession === undefined ? prose.noSessionYet : prose.last(last || prose.noDateStated)}
      </span>
    </>
  );
}

function optionsOf(spans: typeof operationSpans): { value: string; label: string }[] {
  return spans.map(({ value, label }) => ({ value, label }));
}

function recentOf(athletes: readonly AthleteLine[], recent: readonly string[]): readonly AthleteLine[] {
  return recent.flatMap((id) => athletes.find((line) => line.id === id) ?? []).slice(0, 5);
}

function countWords(count: number, isOpen: boolean): string {
  const noun = count === 1 ? prose.oneFound : prose.severalFound;
  return isOpen ? `${count} ${noun}` : prose.found(count, noun);
}
