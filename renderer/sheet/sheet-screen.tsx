import "./sheet.css";
import { Button } from "@mantine/core";
import { useEffect, useState } from "react";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { saveFile } from "../shell/save-file.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { SheetPaper } from "./sheet-paper.tsx";

type Format = HostApi["files.make"]["request"]["format"];

const downloads: readonly { readonly format: Format; readonly label: string }[] = [
  { format: "pdf", label: "PDF" },
  { format: "html", label: "HTML" },
  { format: "csv", label: "CSV, every measure" },
  { format: "json", label: "JSON, the whole result" },
  { format: "session", label: "session.json with all decisions" },
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
      <section className="sheet-tools" aria-label="Take the sheet along">
        <h1 className="area-title">Sheet</h1>
        <Button disabled={sheet === undefined} onClick={() => window.print()}>
          Print
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
      {sheet === undefined ? <p className="muted">Writing the sheet …</p> : <SheetPaper sheet={sheet} />}
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
