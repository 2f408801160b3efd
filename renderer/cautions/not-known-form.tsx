import { TextInput } from "@mantine/core";
import { useState } from "react";
import { countOf } from "../../core/ground/plain-words.ts";
import { carriedName, carryName } from "../shell/carried-name.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { FormDialog } from "./form-dialog.tsx";

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
    if (name === "") return setProblem("Say who states it.");
    setProblem("");
    carryName(name);
    for (const folder of folders) {
      if (!(await apply("cautions.add", { folder, addition: { answers: { notKnown: true, by: name } } }))) return;
    }
    onClose();
  };
  return (
    <FormDialog
      title={folders.length > 1 ? `Not known, in ${countOf(folders.length, "session")}` : "Not known"}
      keep="State that it is not known"
      problem={problem}
      onKeep={() => void keep()}
      onClose={onClose}
    >
      <p>
        For sessions that are over and for imports: nobody can say any more what the cautions would have been answered.
        You state that, by name, and the sheet prints it. Then criteria get their statuses although nobody knows whether
        something spoke against jumping that day; what was answered or read still counts. It cannot be taken back, and
        it opens no session of today.
      </p>
      <div className="caution-fields">
        <TextInput label="Stated by" value={by} onChange={(event) => setBy(event.currentTarget.value)} />
      </div>
    </FormDialog>
  );
}
