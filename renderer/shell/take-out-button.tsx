import { Button } from "@mantine/core";
import { countOf } from "../../core/ground/plain-words.ts";
import { useWorkspace } from "./workspace.tsx";

interface TakeOutButtonProps {
  readonly folder: string;
  /** Recordings of the session, at least one. */
  readonly files: readonly string[];
}

/** Takes recordings out of their session; undo brings them back, and the register keeps them in its bin. */
export function TakeOutButton({ folder, files }: TakeOutButtonProps) {
  const { apply, busy, workspace } = useWorkspace();
  const goesToBin = workspace?.folder === folder && workspace.keptAs !== undefined;
  const where = goesToBin ? "to the register's bin; Undo brings it back" : "Undo brings it back";
  return (
    <Button
      variant="default"
      disabled={busy}
      title={files.length === 1 ? where : where.replace(" it ", " them ")}
      onClick={() => void apply("recordings.takeOut", { folder, files })}
    >
      {files.length === 1 ? "Take out of the session" : `Take ${countOf(files.length, "recording")} out of the session`}
    </Button>
  );
}
