import { Button } from "@mantine/core";
import { useEffect, useRef } from "react";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { saveFile } from "../shell/save-file.ts";
import { words } from "../words/words.ts";

const prose = words.screens.erasing;

interface ErasureCertificateViewProps {
  /** What was erased, as the bin called it: shown, printed and saved here, and kept nowhere else. */
  readonly title: string;
  readonly erased: HostApi["records.erase"]["reply"];
  readonly onAgain: () => void;
  readonly onClose: () => void;
}

/** What an erasure did, searched and found, to be read, printed or saved. What a person must look at comes first. */
export function ErasureCertificateView({ title, erased, onAgain, onClose }: ErasureCertificateViewProps) {
  const { certificate, sections } = erased;
  const start = useRef<HTMLDivElement>(null);
  // The question that was here is gone: reading goes on with the answer.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another certificate is another answer
  useEffect(() => start.current?.focus(), [certificate]);
  const save = () => {
    const lines = sections.flatMap((section) => [section.title, ...section.lines.map((line) => `  ${line}`), ""]);
    saveFile({
      name: `erasure-${certificate.at.slice(0, 10)}.txt`,
      mediaType: "text/plain;charset=utf-8",
      bytes: new TextEncoder().encode([prose.certificate(title), "", ...lines].join("\n")),
    });
  };
  return (
    <div className="erasure-certificate session-statements" ref={start} tabIndex={-1}>
      {sections.map((section) => (
        <section key={section.title} className={section.needsEyes ? "caution finding" : ""}>
          <h3 className="panel-title">
            {section.needsEyes && <span className="visually-hidden">{prose.needsLook} </span>}
            {section.title}
          </h3>
          <ul>
            {section.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ))}
      <p className="muted">{prose.keptNowhere}</p>
      <div className="form-buttons">
        {certificate.remains.length > 0 && <Button onClick={onAgain}>{prose.tryAgain}</Button>}
        <Button variant="default" onClick={() => window.print()}>
          {prose.print}
        </Button>
        <Button variant="default" onClick={save}>
          {prose.saveAsText}
        </Button>
        <Button variant="default" onClick={onClose}>
          {prose.closeTheCertificate}
        </Button>
      </div>
    </div>
  );
}
