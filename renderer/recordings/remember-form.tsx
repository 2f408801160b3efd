import { Button, TextInput } from "@mantine/core";
import { useState } from "react";
import type { FileReading } from "../../core/recording/file-reading.ts";
import type { FileEntry } from "../../core/stated/file-entry.ts";
import { rememberedAnswers } from "../../core/stated/remembered-answers.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;

interface RememberFormProps {
  readonly folder: string;
  readonly file: string;
  readonly reading: FileReading;
  readonly stated: Partial<FileEntry>;
}

/** Offers to remember what was answered, for every file of this shape. Says which saved layout answered here. */
export function RememberForm({ folder, file, reading, stated }: RememberFormProps) {
  const { apply } = useWorkspace();
  const layout = reading.kind === "delimited" ? reading.layout : undefined;
  const [name, setName] = useState(layout ?? "");
  const isNews = reading.kind === "delimited" && rememberedAnswers(stated, undefined) !== undefined;
  return (
    <>
      {layout !== undefined && <p className="muted">{prose.readWithLayout(layout)}</p>}
      {isNews && (
        <form
          className="remember-form"
          onSubmit={(event) => {
            event.preventDefault();
            void apply("layouts.remember", { folder, file, name: name.trim() });
          }}
        >
          <TextInput
            label={prose.rememberAnswers}
            value={name}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <Button type="submit" variant="default" disabled={name.trim() === ""}>
            {prose.remember}
          </Button>
        </form>
      )}
    </>
  );
}
