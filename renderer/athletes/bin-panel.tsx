import { Button } from "@mantine/core";
import { useEffect, useState } from "react";
import type { BinnedRecord } from "../../electron/boundary/register-replies.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { EraseQuestion } from "./erase-question.tsx";

const prose = words.screens.erasing;

/** What was moved to the bin: to be taken out again, or erased for good. */
export function BinPanel({ workspace }: { readonly workspace: Workspace }) {
  const { host, apply, report } = useWorkspace();
  const [records, setRecords] = useState<readonly BinnedRecord[]>();
  const [erasing, setErasing] = useState<BinnedRecord>();
  const canWrite = workspace.register?.readOnlyBecause === undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a changed workspace is worth another look into the bin
  useEffect(() => {
    host.call("bin.read", {}).then((reply) => setRecords(reply.records), report);
  }, [host, report, workspace]);
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="bin-title">
      <h2 id="bin-title" className="panel-title">
        {prose.bin}
      </h2>
      {records?.length === 0 && <p className="muted">{prose.binIsEmpty}</p>}
      <ul className="caution-moments">
        {(records ?? []).map((record) => (
          <li key={`${record.kind} ${record.id}`}>
            <span>{record.title}</span>
            {canWrite && (
              <>
                <Button
                  size="xs"
                  variant="default"
                  aria-label={prose.takeOutOfBin(record.title)}
                  onClick={() => void apply("records.takeOut", { kind: record.kind, id: record.id })}
                >
                  {prose.takeOut}
                </Button>
                <button
                  type="button"
                  className="text-button"
                  aria-label={prose.eraseRecord(record.title)}
                  onClick={() => setErasing(record)}
                >
                  {prose.eraseForGoodAsked}
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
      {erasing !== undefined && <EraseQuestion record={erasing} onClose={() => setErasing(undefined)} />}
    </section>
  );
}
