import { Button, TextInput } from "@mantine/core";
import { useState } from "react";
import { plannedTestName, testsToAdd, withTestAdded } from "../../core/protocol/added-tests.ts";
import type { Protocol } from "../../core/stated/protocol-schema.ts";
import { words } from "../words/words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface AddToProtocolProps {
  readonly folder: string;
  readonly protocol: Protocol;
}

/** Lets a named treating clinician add a test that the session's protocol has not by itself; nothing where there is none. */
export function AddToProtocol({ folder, protocol }: AddToProtocolProps) {
  const { apply } = useWorkspace();
  const [name, setName] = useState("");
  const [entry] = testsToAdd(protocol);
  if (entry === undefined) return null;
  const { trials, mostAttempts, practice = 0 } = entry;
  return (
    <form
      className="add-to-protocol"
      onSubmit={(event) => {
        event.preventDefault();
        void apply("session.change", { folder, change: { protocol: withTestAdded(protocol, entry, name.trim()) } });
      }}
    >
      <p>{prose.mayAdd(plannedTestName(entry), trials, mostAttempts, practice)}</p>
      <TextInput
        size="xs"
        label={prose.whoAdds}
        value={name}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <Button type="submit" size="xs" variant="default" disabled={name.trim() === ""}>
        {prose.addIt}
      </Button>
    </form>
  );
}
