import "./sheet.css";
import { Button } from "@mantine/core";
import { useEffect, useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { saveFile } from "../shell/save-file.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { SheetPaper } from "./sheet-paper.tsx";

const prose = words.screens.sheetScreen;

type Format = HostApi["files.make"]["request"]["format"];

const downloads: readonly { readonly format: Format; readonly label: string }[] = [
  { format: "pdf", label: prose.pdf },
  { format: "html", label: prose.html },
  { format: "csv", label: prose.csvEveryMeasure },
  { format: "json", label: prose.jsonWholeResult },
  { format: "session", label: prose.sessionJsonWithAllDecisions },
];

/** The testing sheet as it will be printed, and every way to take it along. */
export function SheetScreen({ session }: { readonly session: SessionResult }) {
  const { host, apply, report } = useWorkspace();
  const sheet = useSheet(session);
  const [making, setMaking] = useState<Format>();
  const make = (format: Format) => {
    setMaking(format);
    host
      .call("files.make", { folder: session.folder, format })
      .then((file) => {
        saveFile(file);
        // taken along, the decisions are no longer unsaved
        if (format === "session") return apply("workspace.read", {});
      })
      .catch(report)
      .finally(() => setMaking(undefined));
  };
  return (
    <>
      <section className="sheet-tools" aria-label={prose.takeSheetAlong}>
        <h1 className="area-title">{prose.sheet}</h1>
        <Button disabled={sheet === undefined} onClick={() => window.print()}>
          {prose.print}
        </Button>
        {downloads.map(({ format, label }) => (
          <Button
            key={format}
            variant="default"
            disabled={making !== undefined}
            loading={making === format}
            onClick={() => make(format)}
          >
            {label}
          </Button>
        ))}
      </section>
      {sheet === undefined ? <p className="muted">{prose.writingSheet}</p> : <SheetPaper sheet={sheet} />}
    </>
  );
}

/** The sheet of a session, read again whenever its result changes. */
function useSheet(session: SessionResult): SheetDocument | undefined {
  const { host, report } = useWorkspace();
  const [sheet, setSheet] = useState<SheetDocument>();
  useEffect(() => {
    let wanted = true;
    host.call("sheet.read", { folder: session.folder }).then(
      (reply) => {
        if (wanted) setSheet(reply);
      },
      (reason: unknown) => {
        if (wanted) report(reason);
      },
    );
    return () => {
      wanted = false;
    };
  }, [host, report, session]);
  return sheet;
}
