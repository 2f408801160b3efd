import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import { stopKinds } from "../../core/stated/gate-words.ts";
import { stopKindLabels } from "../cautions/stop-kinds.ts";
import { useWorkspace } from "../shell/workspace.tsx";

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
          <strong>Stopped:</strong> {stopped.reason}
          <span className="muted">
            {" "}
            ({stopped.kind === undefined ? "what it was about was not said" : stopKindLabels[stopped.kind]})
          </span>
        </p>
        {canStop && (
          <Button
            size="xs"
            variant="default"
            onClick={() => void apply("session.change", { folder, change: { stopped: null } })}
          >
            It was not stopped
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
      <TextInput
        label="Stop the session because"
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <NativeSelect
        label="The reason is"
        description="The knee and the athlete close jump tests for the day; time and equipment do not."
        value={written}
        onChange={(event) => setKind(event.currentTarget.value)}
        data={[
          { value: "", label: "choose" },
          ...stopKinds.map((each) => ({ value: each, label: stopKindLabels[each] })),
        ]}
      />
      <Button type="submit" variant="default" disabled={reason.trim() === "" || kind === undefined}>
        Stop the session
      </Button>
    </form>
  );
}
