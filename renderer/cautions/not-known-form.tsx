import { TextInput } from "@mantine/core";
import { useState } from "react";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { FormDialog } from "./form-dialog.tsx";

const prose = words.screens.cautionForms;

interface NotKnownFormProps {
  /** The sessions it is stated of. */
  readonly folders: readonly string[];
  readonly onClose: () => void;
}

/** A person states, by name, that what was not asked of sessions that are over is not known. */
export function NotKnownForm({ folders, onClose }: NotKnownFormProps) {
  const { apply } = useWorkspace();
  // Nobody's name stands here beforehand: a statement that cannot be taken back is not made by one key.
  const [by, setBy] = useState(carriedName);
  const [problem, setProblem] = useState("");
  const keep = async () => {
    const name = by.trim();
    if (name === "") return setProblem(prose.sayWhoStates);
    setProblem("");
    carryName(name);
    for (const folder of folders) {
      if (!(await apply("cautions.add", { folder, addition: { answers: { notKnown: true, by: name } } }))) return;
    }
    onClose();
  };
  return (
    <FormDialog
      title={folders.length > 1 ? prose.notKnownIn(folders.length) : prose.notKnown}
      keep={prose.stateNotKnown}
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      <p>{prose.whatNotKnownMeans}</p>
      <div className="caution-fields">
        <TextInput label={prose.statedBy} value={by} onChange={(event) => setBy(event.currentTarget.value)} />
      </div>
    </FormDialog>
  );
}
