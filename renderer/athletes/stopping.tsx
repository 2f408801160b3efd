import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { stopKinds } from "../../core/stated/gate-words.ts";
import { stopKindLabels } from "../cautions/stop-kinds.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.athleteRecord;

/** Stopping with a reason and what it is about, and taking that back. */
export function Stopping({ session, canStop }: { readonly session: SessionResult; readonly canStop: boolean }) {
  const { apply } = useWorkspace();
  const [reason, setReason] = useState("");
  const [written, setKind] = useState("");
  const { folder, description } = session;
  const { stopped } = description;
  const kind = stopKinds.find((each) => each === written);
  if (stopped !== undefined) {
    return (
      <div className="form-buttons">
        <p>
          <strong>{prose.stopped}</strong> {stopped.reason}
          <span className="muted">
            {" "}
            ({stopped.kind === undefined ? prose.aboutNotSaid : stopKindLabels[stopped.kind]})
          </span>
        </p>
        {canStop && (
          <Button
            size="xs"
            variant="default"
            onClick={() => void apply("session.change", { folder, change: { stopped: null } })}
          >
            {prose.notStopped}
          </Button>
        )}
      </div>
    );
  }
  if (!canStop) return null;
  return (
    <form
      className="stopping"
      onSubmit={(event) => {
        event.preventDefault();
        if (kind === undefined) return;
        void apply("session.change", { folder, change: { stopped: { reason: reason.trim(), kind } } });
      }}
    >
      <TextInput label={prose.stopBecause} value={reason} onChange={(event) => setReason(event.currentTarget.value)} />
      <NativeSelect
        label={prose.theReason}
        description={prose.whatClosesTests}
        value={written}
        onChange={(event) => setKind(event.currentTarget.value)}
        data={[
          { value: "", label: prose.choose },
          ...stopKinds.map((each) => ({ value: each, label: stopKindLabels[each] })),
        ]}
      />
      <Button type="submit" variant="default" disabled={reason.trim() === "" || kind === undefined}>
        {prose.stopSession}
      </Button>
    </form>
  );
}
