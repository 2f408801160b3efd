import { Button, TextInput } from "@mantine/core";
import { useRef, useState } from "react";
import type { SavedLayout, Workspace } from "../../electron/boundary/workspace-view.ts";
import { saveFile } from "../shell/save-file.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { layoutWords, shapeWords } from "./layout-words.ts";

const prose = words.screens.recordingReading;

/** The saved layouts: a line that opens the list. */
export function LayoutsPanel({ workspace }: { readonly workspace: Workspace }) {
  const { apply, report } = useWorkspace();
  const { layouts, unusableLayouts } = workspace;
  const [open, setOpen] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  return (
    <section className="panel panel-padded layouts-panel" aria-labelledby="layouts-title">
      <div className="session-summary">
        <h2 id="layouts-title" className="panel-title">
          {prose.savedLayouts}
        </h2>
        <p className="muted">{layouts.length === 0 ? prose.noneYet : prose.eachApplied(layouts.length)}</p>
        {layouts.length > 0 && (
          <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? prose.hideThem : prose.showThem}
          </button>
        )}
        <button type="button" className="text-button" onClick={() => input.current?.click()}>
          {prose.importOne}
        </button>
        <input
          ref={input}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label={prose.savedLayoutToImport}
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            event.currentTarget.value = "";
            if (file === undefined) return;
            file
              .arrayBuffer()
              .then((buffer) => apply("layouts.import", { bytes: new Uint8Array(buffer) }))
              .then((done) => setOpen((before) => before || done))
              .catch(report);
          }}
        />
      </div>
      {unusableLayouts.map((sentence) => (
        <p key={sentence} className="finding caution">
          {sentence}
        </p>
      ))}
      {open && layouts.length > 0 && (
        <ul className="layouts-list">
          {layouts.map((layout) => (
            <LayoutLine key={layout.name} layout={layout} />
          ))}
        </ul>
      )}
    </section>
  );
}

function LayoutLine({ layout }: { readonly layout: SavedLayout }) {
  const { host, apply, report } = useWorkspace();
  const { name } = layout;
  const [renaming, setRenaming] = useState<string>();
  return (
    <li>
      {renaming === undefined ? (
        <strong>{name}</strong>
      ) : (
        <form
          className="remember-form"
          onSubmit={(event) => {
            event.preventDefault();
            void apply("layouts.rename", { name, to: renaming.trim() });
          }}
        >
          <TextInput
            size="xs"
            label={prose.newNameOf(name)}
            value={renaming}
            autoFocus
            onChange={(event) => setRenaming(event.currentTarget.value)}
          />
          <Button size="xs" type="submit" disabled={renaming.trim() === ""}>
            {prose.rename}
          </Button>
          <Button size="xs" variant="default" onClick={() => setRenaming(undefined)}>
            {prose.keepName}
          </Button>
        </form>
      )}
      <span>{layoutWords(layout)}</span>
      <span className="muted layout-shape">{shapeWords(layout)}</span>
      <span className="layout-deeds">
        {renaming === undefined && (
          <button
            type="button"
            className="text-button"
            aria-label={prose.renameOf(name)}
            onClick={() => setRenaming(name)}
          >
            {prose.rename}
          </button>
        )}
        <button
          type="button"
          className="text-button"
          aria-label={prose.exportOf(name)}
          onClick={() => host.call("layouts.export", { name }).then(saveFile, report)}
        >
          {prose.export}
        </button>
        <button
          type="button"
          className="text-button"
          aria-label={prose.removeOf(name)}
          onClick={() => void apply("layouts.remove", { name })}
        >
          {prose.remove}
        </button>
      </span>
    </li>
  );
}
