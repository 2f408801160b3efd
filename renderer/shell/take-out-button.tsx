import { Button } from "@mantine/core";
import { words } from "../words/words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.recordingQuestions;

interface TakeOutButtonProps {
  readonly folder: string;
  /** Recordings of the session, at least one. */
  readonly files: readonly string[];
}

/** Takes recordings out of their session; undo brings them back, and the register keeps them in its bin. */
export function TakeOutButton({ folder, files }: TakeOutButtonProps) {
  const { apply, busy, workspace } = useWorkspace();
  const goesToBin = workspace?.folder === folder && workspace.keptAs !== undefined;
  const isOne = files.length === 1;
  const toTheBin = isOne ? prose.oneToTheBin : prose.severalToTheBin;
  const undoBringsBack = isOne ? prose.undoBringsOneBack : prose.undoBringsSeveralBack;
  return (
    <Button
      variant="default"
      disabled={busy}
      title={goesToBin ? toTheBin : undoBringsBack}
      onClick={() => void apply("recordings.takeOut", { folder, files })}
    >
      {isOne ? prose.takeOut : prose.takeSeveralOut(files.length)}
    </Button>
  );
}
