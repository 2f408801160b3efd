import { Button } from "@mantine/core";
import { useState } from "react";
import type { WatchView } from "../../electron/boundary/watch-view.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { type Asking, askingWords } from "../cautions/answers.ts";
import { AskingForm } from "../cautions/asking-form.tsx";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.watch;

interface WatchCautionsProps {
  readonly cautions: NonNullable<WatchView["cautions"]>;
  readonly workspace: Workspace;
}

/**
 * On the board: that something is to be asked, or that no more jumps take place, and nothing of what was answered or
 * read. The tester's device asks, in a form of its own.
 */
export function WatchCautions({ cautions, workspace }: WatchCautionsProps) {
  const { apply } = useWorkspace();
  const [asking, setAsking] = useState<Asking>();
  const { session, due, closed } = cautions;
  const [first] = due;
  const isShown = workspace.folder === session && workspace.session !== undefined;
  const ask = async (next: Asking) => {
    if (isShown || (await apply("workspace.show", { folder: session }))) setAsking(next);
  };
  return (
    <>
      <div className="watch-cautions" role="status">
        {closed && <p className="watch-next-step">{prose.noMoreJumps}</p>}
        {first !== undefined && !closed && <p className="watch-next-step">{prose.toBeAsked(askingWords[first])}</p>}
      </div>
      {first !== undefined && (
        <div className="watch-buttons">
          <Button onClick={() => void ask(first)}>{prose.askWhen(askingWords[first])}</Button>
        </div>
      )}
      {asking !== undefined && isShown && workspace.session !== undefined && (
        <AskingForm key={asking} session={workspace.session} asking={asking} onClose={() => setAsking(undefined)} />
      )}
    </>
  );
}
