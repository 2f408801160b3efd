import { Button, NativeSelect } from "@mantine/core";
import type { SessionResult } from "../../core/result.ts";
import { athleteWords, dateWords, injuryWords } from "./words.ts";
import { useWorkspace } from "./workspace.tsx";

/** Whose session is shown, the choice of another one, and taking changes back. */
export function Header({ onOpen }: { readonly onOpen: () => void }) {
  const { workspace, apply } = useWorkspace();
  if (workspace === undefined) return null;
  return (
    <section className="header" aria-label="Session">
      {workspace.session === undefined ? (
        <p className="header-athlete">No session is open</p>
      ) : (
        <SessionWords session={workspace.session} />
      )}
      <div className="header-actions">
        {workspace.sessions.length > 0 && (
          <NativeSelect
            aria-label="Session shown"
            className="session-picker"
            value={workspace.folder}
            onChange={(event) => void apply("workspace.show", { folder: event.currentTarget.value })}
            data={workspace.sessions.map(({ folder, title, subtitle }) => ({
              value: folder,
              label: subtitle === "" ? title : `${title} · ${subtitle}`,
            }))}
          />
        )}
        <Button
          variant="default"
          disabled={workspace.undo === ""}
          title={workspace.undo === "" ? "Nothing to undo" : `Undo: ${workspace.undo} (Ctrl+Z)`}
          onClick={() => void apply("workspace.undo", {})}
        >
          Undo
        </Button>
        <Button
          variant="default"
          disabled={workspace.redo === ""}
          title={workspace.redo === "" ? "Nothing to redo" : `Redo: ${workspace.redo} (Ctrl+Shift+Z)`}
          onClick={() => void apply("workspace.redo", {})}
        >
          Redo
        </Button>
        <Button onClick={onOpen}>Open recordings…</Button>
      </div>
    </section>
  );
}

/** The athlete, the day and the milestone; below them the involved side and the injury in words. */
function SessionWords({ session }: { readonly session: SessionResult }) {
  const { date, milestone } = session.description;
  const when = [date === undefined ? "date not stated" : dateWords(date), milestone ?? ""];
  return (
    <div className="header-words">
      <p>
        <strong className="header-athlete">{athleteWords(session.description)}</strong>{" "}
        <span className="muted">{when.filter((part) => part !== "").join(" · ")}</span>
      </p>
      <p className="muted">{injuryWords(session.description)}</p>
    </div>
  );
}
