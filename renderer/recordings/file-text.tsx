import { useEffect, useRef, useState } from "react";
import type { FileReading } from "../../core/recording/file-reading.ts";
import { type LineKind, lineKind } from "../../core/recording/line-kinds.ts";
import type { FileLines } from "../../electron/boundary/recording-replies.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.recordingReading;

interface FileTextProps {
  readonly folder: string;
  readonly file: string;
  readonly reading: FileReading | undefined;
}

/** Pixels; the style sheet sets the same. */
const lineHeight = 19;
const linesAtATime = 200;

/** What a line was read as, in a word beside it; rows of numbers need none. */
const kindWords: Readonly<Record<LineKind, string>> = {
  header: prose.header,
  said: prose.read,
  names: prose.names,
  units: prose.units,
  row: "",
};

/** The file as it stands, with line numbers and what each line was read as; any stretch of it, as it is scrolled to. */
export function FileText({ folder, file, reading }: FileTextProps) {
  const { host, report } = useWorkspace();
  const [shown, setShown] = useState<FileLines>();
  const [first, setFirst] = useState(1);
  const encoding = reading?.kind === "delimited" ? reading.encoding : "";
  // biome-ignore lint/correctness/useExhaustiveDependencies: in another encoding the same bytes are other lines
  useEffect(() => {
    let wanted = true;
    host.call("recordings.lines", { folder, file, first, count: linesAtATime }).then((reply) => {
      if (wanted) setShown(reply);
    }, report);
    return () => {
      wanted = false;
    };
  }, [host, report, folder, file, first, encoding]);
  const box = useRef<HTMLElement>(null);
  const onScroll = () => {
    const top = Math.floor((box.current?.scrollTop ?? 0) / lineHeight);
    // A window that begins well above what is seen, so that scrolling on finds its lines there.
    const half = linesAtATime / 2;
    setFirst(Math.max(1, Math.floor(top / half) * half - half / 2 + 1));
  };
  if (shown === undefined) return <div className="file-text" />;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so it must be reachable by keyboard
    <section className="file-text" aria-label={prose.theFileAsText} tabIndex={0} ref={box} onScroll={onScroll}>
      {shown.total === 0 && <p className="muted">{prose.theFileIsEmpty}</p>}
      <div className="file-text-lines" style={{ height: shown.total * lineHeight }}>
        <table
          aria-label={prose.shownFromLine(shown.total, shown.first)}
          style={{ top: (shown.first - 1) * lineHeight }}
        >
          <tbody>
            {shown.lines.map((line, index) => {
              const number = shown.first + index;
              const kind = reading?.kind === "delimited" ? lineKind(line, number, reading) : "row";
              return (
                <tr key={number} className={`line-${kind}`}>
                  <td className="line-number">{number}</td>
                  <td className="line-kind">{kindWords[kind]}</td>
                  <td className="line-text">{line}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
