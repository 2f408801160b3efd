import { Button, Modal } from "@mantine/core";
import { useEffect, useState } from "react";
import { listInWords } from "../../core/ground/plain-words.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import type { BinnedRecord } from "../../electron/boundary/register-replies.ts";
import type { ErasurePreview } from "../../electron/register/register-views.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";
import { ErasureCertificateView } from "./erasure-certificate.tsx";

const prose = words.screens.erasing;
const counts = words.screens.counts;

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
      title={erased === undefined ? prose.eraseRecordQuestion(title) : prose.certificate(title)}
      closeButtonProps={{ "aria-label": prose.close }}
      size="lg"
      centered
      transitionProps={{ duration: 0 }}
    >
      {erased !== undefined ? (
        <ErasureCertificateView title={title} erased={erased} onAgain={erase} onClose={onClose} />
      ) : preview === undefined ? (
        <p>{prose.looking}</p>
      ) : (
        <div className="session-statements">
          <p>{prose.cannotBeUndone(goneWords(preview))}</p>
          {preview.copiesElsewhere.length === 0 ? (
            <p>{prose.noCopyElsewhere}</p>
          ) : (
            <div>
              <p>{prose.copiesNotReached}</p>
              <ul className="erase-copies">
                {preview.copiesElsewhere.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </div>
          )}
          <div className="form-buttons">
            <Button variant="default" data-autofocus onClick={onClose}>
              {prose.keepEverything}
            </Button>
            <Button loading={erasing} onClick={erase}>
              {prose.eraseForGood}
            </Button>
          </div>
        </div>
      )}
    </Modal>
  );
}

function goneWords({ athletes, sessions, recordings, others, backups }: ErasurePreview): string {
  const gone = [
    athletes > 0 ? counts.athletes(athletes) : "",
    sessions > 0 ? counts.sessions(sessions) : "",
    recordings > 0 ? counts.recordings(recordings) : "",
    others > 0 ? counts.otherRecords(others) : "",
  ].filter((part) => part !== "");
  const rewritten = backups === 0 ? "" : prose.andFromBackups(backups);
  return prose.willBeGone(listInWords(gone), rewritten);
}
