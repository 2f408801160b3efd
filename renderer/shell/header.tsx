import { Button, NativeSelect } from "@mantine/core";
import type { SessionResult } from "../../core/result.ts";
import { athleteWords, dateWords, involvedWords } from "./words.ts";
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

function SessionWords({ session }: { readonly session: SessionResult }) {
  const { description } = session;
  const when = [description.date === undefined ? "date not stated" : dateWords(description.date), description.milestone]
    .filter((part) => part !== undefined && part !== "")
    .join(" · ");
  return (
    <p className="header-words">
      <strong className="header-athlete">{athleteWords(description)}</strong>{" "}
      <span className="header-detail">
        {description.injury === undefined || description.injury === ""
          ? involvedWords(description.involved)
          : `${description.injury} (${involvedWords(description.involved)})`}
      </span>{" "}
      <span className="header-detail">{when}</span>
    </p>
  );
}
