import { Button, TextInput } from "@mantine/core";
import { useState } from "react";
import { plannedTestName, testsToAdd, withTestAdded } from "../../core/protocol/added-tests.ts";
import type { Protocol } from "../../core/stated/protocol-schema.ts";
import { useWorkspace } from "./workspace.tsx";

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
      <p>
        A treating clinician may add the {plannedTestName(entry)}: {trials} wanted, {mostAttempts} at most, {practice}{" "}
        practice.
      </p>
      <TextInput
        size="xs"
        label="Treating clinician who adds it"
        value={name}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <Button type="submit" size="xs" variant="default" disabled={name.trim() === ""}>
        Add it
      </Button>
    </form>
  );
}
