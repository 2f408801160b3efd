import "./limits.css";
import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import { loadWords, type TestLoad, testLoads } from "../../core/gate/test-load.ts";
import type { ClinicLimits } from "../../core/stated/cautions-schema.ts";
import { effusionGrades } from "../../core/stated/gate-words.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { dateWords, sentenceCase } from "../shell/words.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { gradeIn, limitsFrom, type WrittenLimits, writtenLimits } from "./written-limits.ts";

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
        Limits for jump testing
      </h2>
      <p role="status" className={limits.setBy === undefined ? "caution finding" : undefined}>
        {limits.setBy === undefined
          ? "The program's default (common practice). Nobody has confirmed these limits for the clinic, and the sheet says so."
          : `Set by ${limits.setBy.replace(/\.$/, "")}${limits.setAt === undefined ? "" : ` on ${dateWords(limits.setAt)}`}.`}
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
        <TextInput label="Pain, at most, for two-leg jumps (0 to 10)" {...field("painTwoLeg")} />
        <TextInput label="Pain, at most, for single-leg and drop tests (0 to 10)" {...field("painSingleLegAndDrop")} />
        <NativeSelect
          label="Effusion, at most"
          value={written.effusion}
          onChange={(event) => setWritten({ ...written, effusion: gradeIn(event.currentTarget.value) })}
          data={[...effusionGrades]}
        />
        <TextInput label="Landings a day on two legs" {...field("landingsTwoLeg")} />
        <TextInput label="Landings a day on each leg" {...field("landingsPerLeg")} />
      </div>
      <WeeksTable written={written} onChange={setWritten} />
      {canWrite && <TextInput label="Set by" className="limits-by" {...field("setBy")} />}
      <p className="muted">
        They hold for sessions that begin from now on; sessions that are there keep theirs. Under 16 landings are
        halved. The surgeon's word is never overridden by a limit.
      </p>
      {problem !== "" && (
        <p className="caution finding" role="alert">
          {problem}
        </p>
      )}
      {canWrite && <Button type="submit">Set these limits for the clinic</Button>}
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
      aria-label={`Earliest week of ${loadWords(load)}, ${repair === "plain" ? "nothing repaired" : "repaired or not known"}`}
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
      <caption>Earliest week after the operation</caption>
      <thead>
        <tr>
          <th scope="col">Test</th>
          <th scope="col">Nothing repaired</th>
          <th scope="col">Meniscus or cartilage repaired, or not known</th>
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
