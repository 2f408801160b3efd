import { Button, Modal } from "@mantine/core";
import { useEffect, useState } from "react";
import { countOf, listInWords } from "../../core/ground/plain-words.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { BinnedRecord } from "../../electron/boundary/register-api.ts";
import type { ErasurePreview } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { ErasureCertificateView } from "./erasure-certificate.tsx";

interface EraseQuestionProps {
  readonly record: BinnedRecord;
  readonly onClose: () => void;
}

/**
 * Says what erasing removes and what it cannot reach, and asks once; then shows what was done and searched. Until then
 * Escape keeps everything.
 */
export function EraseQuestion({ record, onClose }: EraseQuestionProps) {
  const { host, apply, report } = useWorkspace();
  const [preview, setPreview] = useState<ErasurePreview>();
  const [erased, setErased] = useState<HostApi["records.erase"]["reply"]>();
  const [erasing, setErasing] = useState(false);
  const { kind, id, title } = record;
  useEffect(() => {
    host.call("records.previewErasure", { kind, id }).then(setPreview, report);
  }, [host, report, kind, id]);
  const erase = () => {
    setErasing(true);
    host
      .call("records.erase", { kind, id })
      .then(setErased, report)
      .finally(() => {
        setErasing(false);
        // The list, the bin and what could be taken back are others now, also where only a part was done.
        void apply("workspace.read", {});
      });
  };
  return (
    <Modal
      opened
      onClose={onClose}
      title={erased === undefined ? `Erase for good: ${title}?` : `Certificate of erasure: ${title}`}
      closeButtonProps={{ "aria-label": "Close" }}
      size="lg"
      centered
      transitionProps={{ duration: 0 }}
    >
      {erased !== undefined ? (
        <ErasureCertificateView title={title} erased={erased} onAgain={erase} onClose={onClose} />
      ) : preview === undefined ? (
        <p>Looking at what hangs on it …</p>
      ) : (
        <div className="session-statements">
          <p>{goneWords(preview)} It cannot be undone.</p>
          {preview.copiesElsewhere.length === 0 ? (
            <p>No copy elsewhere is known. One that was made outside this program stays where it is.</p>
          ) : (
            <div>
              <p>These copies elsewhere cannot be reached; delete them yourself:</p>
              <ul className="erase-copies">
                {preview.copiesElsewhere.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </div>
          )}
          <div className="form-buttons">
            <Button variant="default" data-autofocus onClick={onClose}>
              Keep everything
            </Button>
            <Button loading={erasing} onClick={erase}>
              Erase for good
            </Button>
          </div>
        </div>
      )}
    </Modal>
  );
}

function goneWords({ athletes, sessions, recordings, others, backups }: ErasurePreview): string {
  const gone = [
    athletes > 0 ? countOf(athletes, "athlete") : "",
    sessions > 0 ? countOf(sessions, "session") : "",
    recordings > 0 ? countOf(recordings, "recording") : "",
    others > 0 ? countOf(others, "other record") : "",
  ].filter((part) => part !== "");
  const rewritten = backups === 0 ? "" : ` and from ${countOf(backups, "backup")} beside it`;
  return `${listInWords(gone)} will be gone from the register, from its journal's contents${rewritten}.`;
}
