import "./limits.css";
import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import { loadWords, type TestLoad, testLoads } from "../../core/gate/test-load.ts";
import type { ClinicLimits } from "../../core/stated/cautions-schema.ts";
import { effusionGrades } from "../../core/stated/gate-words.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { dateWords, sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { gradeIn, limitsFrom, type WrittenLimits, writtenLimits } from "./written-limits.ts";

const prose = words.screens.limits;

/** The clinic's limits for jump testing: the program's default until somebody confirms or changes them, by name. */
export function LimitsPanel({ workspace }: { readonly workspace: Workspace }) {
  const { host, report } = useWorkspace();
  const [limits, setLimits] = useState<ClinicLimits>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace may hold other limits
  useEffect(() => {
    host.call("limits.read", {}).then((reply) => setLimits(reply.limits), report);
  }, [host, report, workspace]);
  if (limits === undefined) return null;
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  return (
    <section className="panel panel-padded session-statements limits-panel" aria-labelledby="limits-title">
      <h2 id="limits-title" className="panel-title">
        {prose.limitsForJumpTesting}
      </h2>
      <p role="status" className={limits.setBy === undefined ? "caution finding" : undefined}>
        {limits.setBy === undefined
          ? prose.programDefault
          : prose.setBy(
              limits.setBy.replace(/\.$/, ""),
              limits.setAt === undefined ? "" : prose.onDate(dateWords(limits.setAt)),
            )}
      </p>
      <LimitsForm key={JSON.stringify(limits)} limits={limits} canWrite={canWrite} />
    </section>
  );
}

interface LimitsFormProps {
  readonly limits: ClinicLimits;
  readonly canWrite: boolean;
}

function LimitsForm({ limits, canWrite }: LimitsFormProps) {
  const { host, apply, report } = useWorkspace();
  const [written, setWritten] = useState<WrittenLimits>(() => writtenLimits(limits));
  const [problem, setProblem] = useState("");
  const field = (name: Exclude<keyof WrittenLimits, "effusion" | "earliestWeeks">) => ({
    inputMode: name === "setBy" ? ("text" as const) : ("decimal" as const),
    value: written[name],
    onChange: (event: React.ChangeEvent<HTMLInputElement>) =>
      setWritten({ ...written, [name]: event.currentTarget.value }),
  });
  const keep = async () => {
    const outcome = limitsFrom(written);
    if ("problem" in outcome) return setProblem(outcome.problem);
    setProblem("");
    await host.call("limits.set", { limits: outcome.limits, before: limits });
    await apply("workspace.read", {});
  };
  return (
    <form
      className="session-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        keep().catch(report);
      }}
    >
      <div className="caution-fields">
        <TextInput label={prose.painTwoLeg} {...field("painTwoLeg")} />
        <TextInput label={prose.painSingleLeg} {...field("painSingleLegAndDrop")} />
        <NativeSelect
          label={prose.effusion}
          value={written.effusion}
          onChange={(event) => setWritten({ ...written, effusion: gradeIn(event.currentTarget.value) })}
          data={[...effusionGrades]}
        />
        <TextInput label={prose.landingsTwoLeg} {...field("landingsTwoLeg")} />
        <TextInput label={prose.landingsEachLeg} {...field("landingsPerLeg")} />
      </div>
      <WeeksTable written={written} onChange={setWritten} />
      {canWrite && <TextInput label={prose.setByLabel} className="limits-by" {...field("setBy")} />}
      <p className="muted">{prose.whatTheyHoldFor}</p>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      {canWrite && <Button type="submit">{prose.setThem}</Button>}
    </form>
  );
}

interface WeeksTableProps {
  readonly written: WrittenLimits;
  readonly onChange: (written: WrittenLimits) => void;
}

/** The first week of each kind of test after an operation. */
function WeeksTable({ written, onChange }: WeeksTableProps) {
  const cell = (load: TestLoad, repair: "plain" | "repaired") => (
    <TextInput
      size="xs"
      inputMode="numeric"
      aria-label={prose.earliestWeek(loadWords(load), repair === "plain" ? prose.withoutRepair : prose.withRepair)}
      value={written.earliestWeeks[load][repair]}
      onChange={(event) =>
        onChange({
          ...written,
          earliestWeeks: {
            ...written.earliestWeeks,
            [load]: { ...written.earliestWeeks[load], [repair]: event.currentTarget.value },
          },
        })
      }
    />
  );
  return (
    <table className="plain-table limit-weeks">
      <caption>{prose.earliestWeekAfterOperation}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.test}</th>
          <th scope="col">{prose.nothingRepaired}</th>
          <th scope="col">{prose.repaired}</th>
        </tr>
      </thead>
      <tbody>
        {testLoads.map((load) => (
          <tr key={load}>
            <th scope="row">{sentenceCase(loadWords(load))}</th>
            <td>{cell(load, "plain")}</td>
            <td>{cell(load, "repaired")}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
